import type { End, OptionEnd, OptionsReport, Quantity } from '../../core/report.ts'
import { number, plusMinus } from '../figure/text.ts'
import '../figure/plaintable.css'

type Figures = NonNullable<OptionEnd['figures']>

const ROWS: [label: string, pick: (figures: Figures) => Quantity | null][] = [
  ['Free sag', ({ free_sag }) => free_sag],
  ['Rider sag', ({ rider_sag }) => rider_sag],
  ['Ride frequency', ({ frequency }) => frequency],
  ['At full travel', ({ end_force }) => end_force],
  ['× rider load', ({ end_multiple }) => end_multiple],
  ['Of it gas', ({ gas_share }) => gas_share],
  ['Behind the damper’s oil at rider sag', ({ behind }) => behind],
]

/** The figures of all options beside those as found, an end after the other. */
export function SideBySide({ told }: { told: OptionsReport }) {
  return (
    <div class="options-tables">
      {told.found.map((found) => (
        <Table key={found.axle} axle={found.axle} columns={[found, ...told.options.map(({ ends }) => ends.find(({ axle }) => axle === found.axle))]} />
      ))}
    </div>
  )
}

function Table({ axle, columns }: { axle: End; columns: (OptionEnd | undefined)[] }) {
  const rows = ROWS.map(([label, pick]) => ({ label, cells: columns.map((one) => one?.figures && pick(one.figures)) })).filter(({ cells }) => cells.some(Boolean))
  if (rows.length === 0) return null
  return (
    <div class="table-room" role="region" tabIndex={0} aria-label={`Options side by side, ${axle}`}>
      <table class="plain-table lined" data-table={`options ${axle}`}>
        <caption class="aside">The options side by side, {axle}</caption>
        <thead>
          <tr>
            <th scope="col">{axle === 'front' ? 'Front' : 'Rear'}</th>
            {columns.map((_, at) => (
              <th key={at} scope="col">
                {at === 0 ? 'as found' : `option ${at}`}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ label, cells }) => (
            <tr key={label}>
              <th scope="row">
                {label} <small>{cells.find(Boolean)?.unit}</small>
              </th>
              {cells.map((figure, at) => (
                <td key={at}>
                  {figure ? number(figure) : '–'} <small>{figure && plusMinus(figure)}</small>
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}
