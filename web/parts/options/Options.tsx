import { useSignal } from '@preact/signals'
import type { OptionBetween } from '../../core/report.ts'
import { offer as keepOffer } from '../../store/actions.ts'
import type { JobDocument } from '../../store/document.ts'
import { undo } from '../../store/history.ts'
import { job, optionsOld, report } from '../../store/index.ts'
import { MOST, optionsOf, withNewOption, withoutOption } from '../../store/offer.ts'
import { Complaints, Terms } from './Head.tsx'
import { Option } from './Option.tsx'
import { PrintOffer } from './PrintOffer.tsx'
import { SideBySide } from './SideBySide.tsx'
import { answered } from './sources.ts'
import './options.css'

/** What can be offered for this bike, one option after another: what each does, costs, answers and leaves open. */
export function Options() {
  const document = job.value.offer ?? {}
  const options = optionsOf(document)
  const told = report.value?.offer
  const done = report.value?.options
  // What was removed can be brought back for as long as nothing else was done.
  const removed = useSignal<{ title: string; left: JobDocument } | null>(null)
  const justRemoved = removed.value?.left === job.value ? removed.value : null
  const remove = (index: number) => {
    const title = told?.options[index]?.title ?? `Option ${index + 1}`
    keepOffer(withoutOption(document, index), '')
    removed.value = { title, left: job.value }
  }
  return (
    <div class="options" data-options={options.length} data-old={optionsOld.value}>
      {options.length === 0 && (
        <p class="quiet">Put what the customer can choose from side by side: each a setup, parts and hours. The page adds up, says what each does on this bike, and where two ride on the same force curve.</p>
      )}
      {options.length > 0 && told?.invented && <p class="quiet">{told.invented}</p>}
      <Terms offer={document} />
      <Complaints offer={document} />
      {optionsOld.value && <p class="quiet">What the options do is being worked out.</p>}
      {done?.problem && <p class="attend">{done.problem}</p>}
      <div class="options-list">
        {options.map((option, index) => (
          <Option
            key={index}
            offer={document}
            option={option}
            index={index}
            told={told?.options[index]}
            done={done?.options.find(({ number }) => number === index + 1)}
            remove={() => remove(index)}
          />
        ))}
      </div>
      {justRemoved && (
        <p role="status">
          Removed: {justRemoved.title}.{' '}
          <button type="button" onClick={() => void undo()}>
            Bring it back
          </button>
        </p>
      )}
      <button type="button" class="options-add" disabled={options.length >= MOST.options} onClick={() => keepOffer(withNewOption(document, answered()), '')}>
        Add an option
      </button>
      {done && options.length > 0 && <SideBySide told={done} />}
      {done?.between.map((pair) => (
        <Between key={`${pair.one} ${pair.other}`} pair={pair} />
      ))}
      {options.length > 0 && done && <p class="quiet">{done.note}</p>}
      {options.length > 0 && <PrintOffer />}
    </div>
  )
}

/** Two options side by side: the force curves, the price, and what else the money buys. */
function Between({ pair }: { pair: OptionBetween }) {
  return (
    <section class="options-between" data-between={`${pair.one} ${pair.other}`} data-same={pair.same}>
      <h3>
        Option {pair.other} beside option {pair.one}
      </h3>
      {[...pair.words, pair.lead].filter(Boolean).map((words) => (
        <p key={words}>{words}</p>
      ))}
      <dl>
        {pair.differs.map((row) => (
          <div key={row.label}>
            <dt>{row.label}</dt>
            <dd>
              Option {pair.one}: {row.one}
            </dd>
            <dd>
              Option {pair.other}: {row.other}
            </dd>
          </div>
        ))}
      </dl>
    </section>
  )
}
