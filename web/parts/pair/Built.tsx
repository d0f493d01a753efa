import type { End } from '../../core/report.ts'
import type { FieldPath } from '../../generated/schema.ts'
import { type } from '../../store/actions.ts'
import { entryOf, stateOf, textOf } from '../../store/fields.ts'
import { reports } from '../../store/index.ts'
import { builtOf, recommended, sized } from '../../store/looked.ts'
import { schema, stepDecimals } from '../../store/schema.ts'
import { plain } from '../../store/text.ts'
import { ProblemLine, Standing } from '../answer/Standing.tsx'
import { exists } from '../field/Field.tsx'
import { Row } from '../field/Rows.tsx'
import { number } from '../figure/text.ts'
import { unbuild } from './build.ts'

const LINES: Record<End, [words: string, paths: FieldPath[], unit: string][]> = {
  front: [
    ['Built', ['front.built_pressure'], 'bar'],
    ['Built', ['front.built_rate', 'front.built_rate_right'], 'N/mm'],
    ['with', ['front.built_preload'], 'mm preload'],
    ['gap', ['front.built_gap_left', 'front.built_gap_right'], 'mm'],
  ],
  rear: [
    ['Built', ['rear.built_rate'], 'N/mm'],
    ['with', ['rear.built_preload'], 'mm preload'],
  ],
}

/** What was built, as a sentence; under a figure is only ever the line of its origin. Every figure can be typed. */
export function Built({ end }: { end: End }) {
  const view = reports[end].value
  const built = builtOf(end)
  const lines = LINES[end].map(([words, paths, unit]) => [words, paths.filter((path) => entryOf(path) !== undefined), unit] as const).filter(([, paths]) => paths.length > 0)
  return (
    <div class={`answer ${view.stale === 'last good' ? 'last-good' : ''}`} data-built={built ? (built.setup ? 'yes' : 'no') : 'nothing'} data-stale={view.stale}>
      <div aria-live="polite">
        {lines.length === 0 && <p class="answer-none">Nothing is built yet.</p>}
        <p class="answer-lines">
          {lines.map(([words, paths, unit]) => (
            <span key={paths[0]} class="answer-line">
              <span class="answer-words">{words} </span>
              <span class="answer-figures">
                {paths.map((path, index) => (
                  <Typed key={path} path={path} unit={paths.length === 1 ? unit : index === 0 ? 'left,' : `${unit} right`} />
                ))}
              </span>
            </span>
          ))}
        </p>
        {built && <Told end={end} />}
      </div>
      {built?.problem && (
        <div class="answer-problems">
          <ProblemLine {...built.problem} />
        </div>
      )}
      <Standing view={view} />
    </div>
  )
}

/** A figure as typed, over its origin's line. */
function Typed({ path, unit }: { path: FieldPath; unit: string }) {
  const state = stateOf(path)
  const field = schema.fields[path]
  const value = state?.value
  return (
    <span class="result">
      <b class={entryOf(path)?.origin ?? 'stated'}>{typeof value === 'number' ? plain(value, stepDecimals(field)) : String(entryOf(path)?.value ?? '')}</b>
      <span class="unit"> {unit.replace(field.unit, state?.unit || field.unit)}</span>
    </span>
  )
}

/** What it rides like, beside the answer. */
function Told({ end }: { end: End }) {
  const report = sized(reports[end].value.report)
  const setup = report?.built?.setup
  const answer = report && recommended(report)
  if (!setup || answer?.kind !== 'answer' || !answer.setup) return null
  const [rate, wanted] = [setup, answer.setup].map((one) => one.pressure ?? one.rate)
  const same = rate!.value === wanted!.value
  return (
    <p>
      {number(setup.frequency)} Hz, answer {number(answer.setup.frequency)} Hz{same ? '.' : `; the answer is ${number(wanted!)} ${wanted!.unit}.`}
    </p>
  )
}

/** Rows to type: the right leg's spring only where it is another one. */
function rowsOf(end: End): FieldPath[][] {
  if (end === 'rear') return [['rear.built_rate'], ['rear.built_preload']]
  return [['front.built_pressure'], unlike() ? ['front.built_rate', 'front.built_rate_right'] : ['front.built_rate'], ['front.built_preload'], ['front.built_gap_left', 'front.built_gap_right']]
}

const unlike = () => entryOf('front.built_rate_right') !== undefined || textOf('front.spring_kind') === 'unequal'

/** The figures of what is built, to be typed as they are read back. */
export function BuiltRows({ end }: { end: End }) {
  const rows = rowsOf(end).map((row) => row.filter(exists))
  const any = rows.flat().some((path) => entryOf(path) !== undefined)
  const left = textOf('front.built_rate')
  return (
    <div class="rows built-rows">
      <h2>As read back at the bench</h2>
      {rows.map((row) => row.length > 0 && <Row key={row[0]} row={row} />)}
      {any && (
        <div class="built-ways">
          {end === 'front' && left && !unlike() && (
            <button type="button" class="link" onClick={() => type('front.built_rate_right', left, 'stated')}>
              Other spring at the right ›
            </button>
          )}
          <button type="button" class="link" onClick={() => unbuild(end)}>
            Not built after all
          </button>
        </div>
      )}
    </div>
  )
}
