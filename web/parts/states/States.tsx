import type { StatesReport } from '../../core/report.ts'
import { report, statesOld } from '../../store/index.ts'
import { number, withUnit } from '../figure/text.ts'
import '../figure/plaintable.css'
import './states.css'

/** The fork in each state that its sealed cartridge may be in; what opening it takes away, and what replaces it. */
export function States() {
  const states = report.value?.states
  if (!states) return <p class="quiet">The states of this fork are being worked out.</p>
  return (
    <section class="states" aria-label="States of this fork" data-states={states.problem ? 'problem' : 'told'} data-old={statesOld.value}>
      <h3>States of this fork</h3>
      {statesOld.value && <p class="quiet">Of the entries before, being worked out again.</p>}
      {states.problem && <p class="attend">{states.problem}</p>}
      {states.rows.length > 0 && <Rows states={states} />}
      {states.rows.map(({ state, problem }) => problem && <p key={state}>{problem}</p>)}
      <ul>
        {states.words.map((words) => (
          <li key={words}>{words}</li>
        ))}
      </ul>
      {states.rows.some(({ words }) => words) && (
        <details>
          <summary>Each state in words</summary>
          {states.rows.map(({ state, words }) => words && <p key={state}>{words}</p>)}
        </details>
      )}
      {states.note && <p class="quiet">{states.note}</p>}
    </section>
  )
}

function Rows({ states }: { states: StatesReport }) {
  return (
    <table class="plain-table lined" data-table="states">
      <caption class="aside">Behind the damper’s oil, bar, at {states.strokes.map(withUnit).join(', ')} of stroke</caption>
      <thead>
        <tr>
          <td />
          <th scope="col">sag mm</th>
          <th scope="col">full travel × load</th>
          <th scope="col">bar behind oil: sag · half · full</th>
        </tr>
      </thead>
      <tbody>
        {states.rows.map(
          ({ state, label, figures }) =>
            figures && (
              <tr key={state}>
                <th scope="row">{label}</th>
                <td>{number(figures.rider_sag)}</td>
                <td>{number(figures.end_multiple)}</td>
                <td>{figures.behind.map(number).join(' · ')}</td>
              </tr>
            ),
        )}
      </tbody>
    </table>
  )
}
