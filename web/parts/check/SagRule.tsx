import type { Report } from '../../core/report.ts'
import { withUnit } from '../figure/text.ts'
import { Mark } from '../figure/Mark.tsx'
import { useWidth } from '../figure/useWidth.ts'

type End = NonNullable<Report['sags']>['ends'][number]

const HEIGHT = 34
const LINE = 20
const EDGE = 2

/** The travel as a rule: a bracket where each sag was expected, a mark where it was found. */
export function SagRule({ end }: { end: End }) {
  const { place, width } = useWidth<HTMLDivElement>()
  const x = (at: number) => EDGE + (Math.min(Math.max(at, 0), end.travel) / end.travel) * (width - 2 * EDGE)
  const said = end.rows.map((row) => `${row.label} found at ${withUnit(row.found)}, expected at ${withUnit(row.expected)}`).join('; ')
  return (
    <div class="sag-rule" ref={place}>
      {width > 0 && (
        <svg width={width} height={HEIGHT} role="img" aria-label={`Travel ${Math.round(end.travel)} mm: ${said}`}>
          {Array.from({ length: Math.floor(end.travel / 10 + 0.05) + 1 }, (_, i) => 10 * i).map((at) => (
            <line key={at} class="tick" x1={x(at)} x2={x(at)} y1={LINE} y2={LINE + (at % 100 === 0 ? 9 : at % 50 === 0 ? 7 : 5)} />
          ))}
          <line class="rule-line" x1={x(0)} x2={x(end.travel)} y1={LINE} y2={LINE} />
          {end.rows.map(({ label, expected, found, believed }) => {
            const half = expected.plus_minus_95 ?? 0
            return (
              <g key={label} class={believed ? '' : 'left-out'}>
                <path class="bracket" d={`M${x(expected.value - half)} 14V6H${x(expected.value + half)}V14`} />
                <Mark kind={label === 'free sag' ? 'free' : 'rider'} x={x(found.value)} y={LINE} />
              </g>
            )
          })}
        </svg>
      )}
    </div>
  )
}
