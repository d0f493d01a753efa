import type { Candidate, End, Quantity, Setup } from '../../core/report.ts'
import { clear } from '../../store/actions.ts'
import { reports } from '../../store/index.ts'
import { number, plusMinus, rateText } from '../figure/told.ts'
import './tried.css'

type Row = [name: string, unit: string, of: (setup: Setup) => Quantity | null]

const ROWS: Row[] = [
  ['Air pressure', 'bar', (setup) => setup.pressure],
  ['Spring rate', 'N/mm', (setup) => setup.rate],
  ['Preload', 'mm', (setup) => setup.preload],
  ['Gap', 'mm', (setup) => setup.gap],
  ['Free sag', 'mm', (setup) => setup.free_sag],
  ['Rider sag', 'mm', (setup) => setup.rider_sag],
  ['Ride frequency', 'Hz', (setup) => setup.frequency],
  ['End force', 'kN', (setup) => setup.end_force],
  ['End force / rider load', '×', (setup) => setup.end_multiple],
]

/** What is tried, beside the answer; nothing while nothing is tried. */
export function Tried({ end }: { end: End }) {
  const { report } = reports[end].value
  if (!report || report.state === 'refused' || !report.tried) return null
  const { setup, problem } = report.tried
  const chosen = report.state === 'ok' ? report.chosen : null
  return (
    <div class="tried" data-tried={end} aria-live="polite">
      {problem && <p class="tried-problem">{[problem.message, problem.limit, problem.way_out].filter(Boolean).join(' ')}</p>}
      {setup && <Beside setup={setup} chosen={chosen} />}
      <button type="button" onClick={() => back(end)}>
        Back to the answer
      </button>
    </div>
  )
}

function Beside({ setup, chosen }: { setup: Setup; chosen: Candidate | null }) {
  return (
    <table>
      <thead>
        <tr>
          <th scope="col">
            <span class="aside">What</span>
          </th>
          {chosen && <th scope="col">Answer</th>}
          <th scope="col">Tried</th>
          <th scope="col">
            <span class="aside">Unit</span>
          </th>
        </tr>
      </thead>
      <tbody>
        {ROWS.filter(([, , of]) => of(setup)).map(([name, unit, of]) => (
          <tr key={name}>
            <th scope="row">{name}</th>
            {chosen && <Cell of={of(chosen)} />}
            <Cell of={of(setup)} tried />
            <td class="unit">{unit}</td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}

function Cell({ of, tried = false }: { of: Quantity | null; tried?: boolean }) {
  if (!of) return <td />
  return (
    <td class={tried ? 'tried-figure' : ''}>
      {of.unit === 'N/mm' ? rateText(of.value) : number(of)} {plusMinus(of) && <small>{plusMinus(of)}</small>}
    </td>
  )
}

function back(end: End): void {
  if (end === 'front') clear('front.tried_rate', 'front.tried_preload', 'front.tried_gap', 'front.tried_pressure')
  else clear('rear.tried_rate', 'rear.tried_preload')
}
