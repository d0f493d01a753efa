import type { End, Quantity, Setup } from '../../core/report.ts'
import { lookedAt, recommended } from '../../store/looked.ts'
import { Fold } from '../fold/Fold.tsx'
import { number, plusMinus } from '../figure/text.ts'
import './beside.css'

type Row = [name: string, unit: string, of: (setup: Setup) => Quantity | null | undefined]

const ROWS: Row[] = [
  ['Air pressure', 'bar', (setup) => setup.pressure],
  ['Spring rate', 'N/mm', (setup) => setup.rate],
  ['Preload', 'mm', (setup) => setup.preload],
  ['Gap', 'mm', (setup) => setup.gap],
  ['Free sag', 'mm', (setup) => setup.free_sag],
  ['Rider sag', 'mm', (setup) => setup.rider_sag],
  ['Ride frequency', 'Hz', (setup) => setup.frequency],
  ['Force at full travel', 'kN', (setup) => setup.end_force],
  ['Force at full travel over rider load', '×', (setup) => setup.end_multiple],
]

/** What is tried, or built, beside the answer; nothing where the answer itself is looked at. */
export function Beside({ end }: { end: End }) {
  const looked = lookedAt(end)
  if (!looked?.setup || (looked.kind !== 'try' && looked.kind !== 'built')) return null
  const other = recommended(looked.report)
  const [mine, its] = [looked.kind === 'try' ? 'Try' : 'Built', other.kind === 'answer' ? 'Answer' : 'As found']
  return (
    <Fold place={end} name="beside" title={`${mine} and ${its.toLowerCase()}`} says="figure by figure">
      <table class="beside" data-beside={looked.kind}>
        <thead>
          <tr>
            <th scope="col">
              <span class="aside">What</span>
            </th>
            {other.setup && <th scope="col">{its}</th>}
            <th scope="col">{mine}</th>
            <th scope="col">
              <span class="aside">Unit</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {ROWS.filter(([, , of]) => of(looked.setup!)).map(([name, unit, of]) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              {other.setup && <Cell of={of(other.setup)} />}
              <Cell of={of(looked.setup!)} mine />
              <td class="unit">{unit}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </Fold>
  )
}

function Cell({ of, mine = false }: { of: Quantity | null | undefined; mine?: boolean }) {
  if (!of) return <td />
  return (
    <td class={mine ? 'mine' : ''}>
      {number(of)} {plusMinus(of) && <small>{plusMinus(of)}</small>}
    </td>
  )
}
