import { Mark, type MarkKind } from './Mark.tsx'
import { useWidth } from './useWidth.ts'
import './travelrule.css'

const HEIGHT = 34
const LINE = 20
const EDGE = 2

interface Spot {
  mark: MarkKind
  at: number
  /** The bracket over it. */
  low: number
  high: number
  leftOut?: boolean
}

/** The travel as a rule, 10 mm a tick: a bracket where each sag is expected or usual, a mark where it was found. */
export function TravelRule({ travel, spots, said }: { travel: number; spots: Spot[]; said: string }) {
  const { place, width } = useWidth<HTMLDivElement>()
  const x = (at: number) => EDGE + (Math.min(Math.max(at, 0), travel) / travel) * (width - 2 * EDGE)
  return (
    <div class="sag-rule" ref={place}>
      {width > 0 && (
        <svg width={width} height={HEIGHT} role="img" aria-label={`Travel ${Math.round(travel)} mm: ${said}`}>
          {Array.from({ length: Math.floor(travel / 10 + 0.05) + 1 }, (_, i) => 10 * i).map((at) => (
            <line key={at} class="tick" x1={x(at)} x2={x(at)} y1={LINE} y2={LINE + (at % 100 === 0 ? 9 : at % 50 === 0 ? 7 : 5)} />
          ))}
          <line class="rule-line" x1={x(0)} x2={x(travel)} y1={LINE} y2={LINE} />
          {spots.map(({ mark, at, low, high, leftOut }) => (
            <g key={mark} class={leftOut ? 'left-out' : ''}>
              <path class="bracket" d={`M${x(low)} 14V6H${x(high)}V14`} />
              <Mark kind={mark} x={x(at)} y={LINE} />
            </g>
          ))}
        </svg>
      )}
    </div>
  )
}
