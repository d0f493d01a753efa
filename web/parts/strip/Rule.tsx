import type { Figures, Window } from '../../core/report.ts'
import { withUnit } from '../figure/text.ts'
import { Mark } from '../figure/Mark.tsx'
import { useWidth } from '../figure/useWidth.ts'

const HEIGHT = 28
const LINE = 13
const EDGE = 2

/** The travel as a rule, 10 mm a tick: sags and end at their true places, usual windows as brackets over it. */
export function Rule({ figures }: { figures: Figures }) {
  const { place, width } = useWidth<HTMLSpanElement>()
  return (
    <span class="rule" ref={place}>
      {width > 0 && <Drawing {...figures} width={width} />}
    </span>
  )
}

function Drawing({ setup, travel, windows, width }: Figures & { width: number }) {
  // A scale of its own keeps the charts' library off the first screen.
  const x = (at: number) => EDGE + (at / travel) * (width - 2 * EDGE)
  const { free_sag, rider_sag } = setup
  const said = `Travel ${Math.round(travel)} mm: free sag at ${withUnit(free_sag)}, rider sag at ${withUnit(rider_sag)}`
  return (
    <svg width={width} height={HEIGHT} role="img" aria-label={said}>
      {Array.from({ length: Math.floor(travel / 10 + 0.05) + 1 }, (_, i) => 10 * i).map((at) => (
        <line key={at} class="tick" x1={x(at)} x2={x(at)} y1={LINE} y2={LINE + (at % 100 === 0 ? 9 : at % 50 === 0 ? 7 : 5)} />
      ))}
      <line class="rule-line" x1={x(0)} x2={x(travel)} y1={LINE} y2={LINE} />
      <Bracket window={windows.free_sag} x={x} />
      <Bracket window={windows.rider_sag} x={x} />
      <Mark kind="end" x={x(travel)} y={LINE} />
      <Mark kind="free" x={x(free_sag.value)} y={LINE} />
      <Mark kind="rider" x={x(rider_sag.value)} y={LINE} />
    </svg>
  )
}

function Bracket({ window, x }: { window: Window; x: (at: number) => number }) {
  const [low, high] = [x(window.low) + 1, x(window.high) - 1]
  return <path class="bracket" d={`M${low} 8V1.500H${high}V8`} />
}
