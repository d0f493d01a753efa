import { range } from 'd3-array'
import { numberText } from '../figure/text.ts'
import { reader } from './geometry.ts'
import { forceWords, type Shown } from './words.ts'
import '../figure/plaintable.css'

const STEP = 25

/** The table behind the chart: every 25 mm, and full travel. */
export function ChartTable({ shown, oneSpring }: { shown: Shown; oneSpring: boolean }) {
  const { curve, end } = shown
  const travel = curve.stroke.at(-1)!
  const strokes = [...range(0, travel - 0.5, STEP), travel]
  const [springs, slow, working, fast, rate] = (['springs', 'slow', 'working', 'fast', 'wheel_rate'] as const).map((series) => reader(curve, series))
  return (
    <div class="table-room" role="region" tabIndex={0} aria-label={`Table behind the chart, ${end}`}>
      <table class="plain-table chart-table" data-table={end}>
        <caption>
          {forceWords(end, oneSpring)}; gas is settled less springs; wheel rate N/mm; {curve.axis}, mm.
        </caption>
        <thead>
          <tr>
            {['stroke', 'springs', 'gas', 'settled', 'riding', 'sudden', 'wheel rate'].map((name) => (
              <th key={name} scope="col">
                {name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {strokes.map((mm) => (
            <tr key={mm}>
              <th scope="row">{numberText(mm, 0)}</th>
              <td>{numberText(springs!(mm), 2)}</td>
              <td>{numberText(slow!(mm) - springs!(mm), 2)}</td>
              <td>{numberText(slow!(mm), 2)}</td>
              <td>{numberText(working!(mm), 2)}</td>
              <td>{numberText(fast!(mm), 2)}</td>
              <td>{numberText(rate!(mm), 1)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}
