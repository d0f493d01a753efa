import type { StatesReport } from '../../core/report.ts'
import { report, statesOld } from '../../store/index.ts'
import { look, lookAtStates } from '../../store/place.ts'
import { Figure } from '../figure/Figure.tsx'
import { number, withUnit } from '../figure/text.ts'
import { buildAs } from '../pair/build.ts'
import '../figure/plaintable.css'
import './states.css'

/** The fork in each state that its sealed cartridge may be in; what opening it takes away, and what replaces it. */
export function States() {
  const states = report.value?.states
  if (!states) return <p class="quiet">The states of this fork are being worked out.</p>
  return (
    <section class="states" aria-label="States of this fork" data-states={states.problem ? 'problem' : 'told'} data-old={statesOld.value}>
      <h2>All states</h2>
      {statesOld.value && <p class="quiet">Of the entries before, being worked out again.</p>}
      {states.problem && <p class="attend">{states.problem}</p>}
      {states.rows.length > 0 && <Rows states={states} />}
      {states.rows.map(({ state, problem }) => problem && <p key={state}>{problem}</p>)}
      {states.rows.some(({ words }) => words) && (
        <details>
          <summary>Each state in words</summary>
          {states.rows.map(({ state, words }) => words && <p key={state}>{words}</p>)}
        </details>
      )}
      {states.rows.some(({ plain }) => plain) && (
        <details>
          <summary>The same for the customer</summary>
          {states.rows.map(({ state, plain }) => plain && <p key={state}>{plain}</p>)}
        </details>
      )}
      {states.lost.length > 0 && <Lost states={states} />}
      {states.build && <Replacements states={states} />}
      {states.note && <p class="quiet">{states.note}</p>}
    </section>
  )
}

/** Each name is a tap away from that state on the leg, the first one laid over it. */
function Rows({ states }: { states: StatesReport }) {
  const first = states.rows.find(({ figures }) => figures)?.state
  const seen = (state: string) => {
    lookAtStates(first === undefined || first === state ? [state] : [state, first])
    scrollTo({ top: 0 })
  }
  return (
    <table class="plain-table lined states-rows" data-table="states">
      <caption class="aside">Behind the damper’s oil, bar, at {states.strokes.map(withUnit).join(', ')} of stroke</caption>
      <thead>
        <tr>
          <td rowSpan={2} />
          <th scope="col" rowSpan={2}>
            sag mm
          </th>
          <th scope="col" rowSpan={2}>
            full travel × load
          </th>
          <th scope="colgroup" colSpan={states.strokes.length}>
            bar behind oil, at mm
          </th>
        </tr>
        <tr>
          {states.strokes.map((stroke) => (
            <th key={stroke.case} scope="col">
              {number(stroke)}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {states.rows.map(
          ({ state, label, figures }) =>
            figures && (
              <tr key={state}>
                <th scope="row">
                  <button type="button" class="link" onClick={() => seen(state)}>
                    {label} ›
                  </button>
                </th>
                <td>
                  <Figure of={figures.rider_sag} unit="" />
                </td>
                <td>
                  <Figure of={figures.end_multiple} />
                </td>
                {figures.behind.map((figure) => (
                  <td key={figure.case}>
                    <Figure of={figure} unit="" />
                  </td>
                ))}
              </tr>
            ),
        )}
      </tbody>
    </table>
  )
}

/** What was lost, at three strokes, and under each what replaces it. */
function Lost({ states }: { states: StatesReport }) {
  return (
    <>
      <h2>What was lost, what replaces it</h2>
      <table class="plain-table lined states-lost" data-table="lost">
        <caption class="aside">As built less opened, one leg</caption>
        <thead>
          <tr>
            <td />
            {states.strokes.map((stroke) => (
              <th key={stroke.case} scope="col">
                {stroke.case} {withUnit(stroke)}
              </th>
            ))}
          </tr>
        </thead>
        {states.lost.map(({ what, label, figures, replaced }) => (
          <tbody key={what} data-lost={what}>
            <tr>
              <th scope="row">{label}</th>
              {figures.map((figure) => (
                <td key={figure.case}>
                  <Figure of={figure} unit="" />
                </td>
              ))}
            </tr>
            {replaced && (
              <tr class="states-replaced">
                <td colSpan={figures.length + 1}>{replaced}</td>
              </tr>
            )}
          </tbody>
        ))}
      </table>
    </>
  )
}

/** One tap puts a replacement in as built; where the fork is not opened yet, what comes first. */
function Replacements({ states }: { states: StatesReport }) {
  const put = (entries: StatesReport['replacements'][number]['entries']) => {
    buildAs('front', entries)
    look('built')
    scrollTo({ top: 0 })
  }
  return (
    <div class="states-build" role="group" aria-label="Put in as built">
      {states.replacements.map(({ state, label, entries, caution }) => (
        <div key={state}>
          {entries.length > 0 && (
            <button type="button" disabled={statesOld.value} onClick={() => put(entries)}>
              {label}
            </button>
          )}
          {caution && <p class="attend">{caution}</p>}
        </div>
      ))}
      <p class="quiet">{states.build}</p>
    </div>
  )
}
