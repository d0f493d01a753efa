import { range } from 'd3-array'
import type { DrawnLeg, Section } from '../../core/report.ts'
import { numberText } from '../figure/text.ts'
import { read } from './layout.ts'
import '../figure/plaintable.css'

const STEP = 25

/** What the drawing shows, every 25 mm: oil, gas, pressure, and the leg's own forces. */
export function LegTable({ section, leg }: { section: Section; leg: DrawnLeg }) {
  const last = section.stroke.at(-1)!
  const [over, ...closed] = leg.spaces
  const at = (values: number[], mm: number, decimals: number) => numberText(read(section, values, mm), decimals)
  return (
    <div class="table-room" role="region" tabIndex={0} aria-label="Table of the leg along its stroke">
      <table class="plain-table chart-table" data-table="leg">
        <caption>
          {leg.side === 'each leg' ? 'Each leg' : `The ${leg.side}`}: oil mm under the rim; gas ml; pressure bar over outside, gas {section.process}; force N along the leg.
        </caption>
        <thead>
          <tr>
            {['stroke', 'oil', 'gas', 'bar', ...closed.flatMap((space) => [...(space.volume ? [space.name] : []), 'bar']), 'springs N', 'gas N'].map((name, i) => (
              <th key={i} scope="col">
                {name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {[...range(0, last - 0.5, STEP), last].map((mm) => (
            <tr key={mm}>
              <th scope="row">{numberText(mm, 0)}</th>
              <td>{at(over!.bottom, mm, 0)}</td>
              <td>{at(over!.volume!, mm, 0)}</td>
              <td>{at(over!.pressure, mm, 1)}</td>
              {closed.map((space) => [
                space.volume && <td key={`${space.name} ml`}>{at(space.volume, mm, 0)}</td>,
                <td key={space.name}>{at(space.pressure, mm, 1)}</td>,
              ])}
              <td>{at(leg.spring_force, mm, 0)}</td>
              <td>{at(leg.gas_force, mm, 0)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}
