import type { OilReport, Quantity } from '../../core/report.ts'
import { report } from '../../store/index.ts'
import { number, withUnit } from '../figure/text.ts'
import '../figure/plaintable.css'
import './oil.css'

/** What the sheet of the tin says: cold, in use and hot, what it grows by, and what to order. */
export function Oil() {
  const oil = report.value?.oil
  if (!oil) {
    return (
      <p class="quiet" data-oil="none">
        Enter the two viscosities of the tin's data sheet, and see how much thinner the oil gets between the cold start and the hot leg, and how many tins to order.
      </p>
    )
  }
  return (
    <div class="oil" data-oil={oil.problem ? 'problem' : 'told'}>
      <div aria-live="polite">
        {oil.problem && <p class="attend">{oil.problem}</p>}
        {oil.words.slice(0, 1).map((words) => (
          <p key={words}>{words}</p>
        ))}
      </div>
      <Points oil={oil} />
      {oil.words.slice(1).map((words) => (
        <p key={words}>{words}</p>
      ))}
      <p class="quiet">{oil.note}</p>
    </div>
  )
}

const COLUMNS = [
  ['first', 'oil', 'mm²/s'],
  ['second', 'second oil', 'mm²/s'],
  ['mix', 'mix', 'mm²/s'],
  ['density', 'density', 'kg/m³'],
] as const

/** A row for each temperature; the columns that there is something for, and the index under those that have one. */
function Points({ oil }: { oil: OilReport }) {
  const shown = COLUMNS.filter(([key]) => oil.points.some((point) => point[key]))
  if (shown.length === 0) return null
  const { first, second, mix } = oil.index
  const indices: Partial<Record<string, Quantity | null>> = { first, second, mix }
  return (
    <table class="plain-table lined" data-table="oil">
      <caption class="aside">Viscosity by temperature</caption>
      <thead>
        <tr>
          <td />
          {shown.map(([key, name, unit]) => (
            <th key={key} scope="col">
              {name} {unit}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {oil.points.map((point) => (
          <tr key={point.when}>
            <th scope="row">
              {point.label}, {withUnit(point.temperature)}
            </th>
            {shown.map(([key]) => (
              <Cell key={key} figure={point[key]} />
            ))}
          </tr>
        ))}
        {shown.some(([key]) => indices[key]) && (
          <tr>
            <th scope="row">Viscosity index</th>
            {shown.map(([key]) => (
              <Cell key={key} figure={indices[key]} />
            ))}
          </tr>
        )}
      </tbody>
    </table>
  )
}

function Cell({ figure }: { figure: Quantity | null | undefined }) {
  return <td>{figure ? number(figure) : ''}</td>
}
