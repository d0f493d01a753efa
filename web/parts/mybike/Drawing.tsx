import { rides } from '../../store/mybike.ts'
import { FrontDrawing } from './FrontDrawing.tsx'
import './drawing.css'

/** How far the body of the bike stands up or down: hanging, alone, with the rider on. */
const HEIGHTS: Record<string, number> = { dot: -6, hanging: -26, pushed: -6, lifted: -9, 'aboard pushed': 18, 'aboard lifted': 14 }
const AXLE = { x: 104, y: 214 }
const DOT = { x: 104, y: 80 }
const GROUND = 290

const TOLD: Record<string, string> = {
  dot: 'The bike from the side: a dot on the tail, straight above the rear axle.',
  hanging: 'The rear wheel hangs off the ground. The tape runs from the middle of the axle straight up to the dot.',
  pushed: 'The bike alone on its wheels. The tail was pushed down and let go. The tape runs from the middle of the axle to the dot.',
  lifted: 'The bike alone on its wheels. The tail was lifted and let go. The tape runs from the middle of the axle to the dot.',
  'aboard pushed': 'The rider is on the bike. The tail was pushed down and let go. The tape runs from the middle of the axle to the dot.',
  'aboard lifted': 'The rider is on the bike. The tail was lifted and let go. The tape runs from the middle of the axle to the dot.',
}

/** The bike from the side and where the tape goes. Our own drawing; what the hand holds or does is in the colour of the hand. */
export function Drawing({ of }: { of: string }) {
  return of.startsWith('front') ? <FrontDrawing of={of.replace(/^front /, '')} /> : <RearDrawing of={of} />
}

function RearDrawing({ of }: { of: string }) {
  const down = HEIGHTS[of] ?? 0
  const dot = { x: DOT.x, y: DOT.y + down }
  const raised = of === 'hanging' ? 8 : 0
  const push = of.endsWith('pushed')
  const lift = of.endsWith('lifted')
  return (
    <svg class="mybike-drawing" viewBox="0 0 358 310" role="img" aria-label={TOLD[of]}>
      <path class="ground" d={`M4 ${GROUND + raised}H354`} />
      <Wheel at={AXLE} />
      <path class="arm" d={`M${AXLE.x + 4} ${AXLE.y - 8} 292 ${180 + down}M${AXLE.x + 4} ${AXLE.y + 8} 292 ${200 + down}`} />
      <path class="shock" d={`M262 ${98 + down} 236 ${(AXLE.y + 186 + down) / 2}`} />
      <path class="shock inner" d={`M262 ${98 + down} 236 ${(AXLE.y + 186 + down) / 2}`} />
      <g transform={`translate(0 ${down})`}>
        <path d="M26 66 104 80 206 96 344 86M26 66Q44 92 104 104L212 126M206 96 212 126 290 178" />
        <circle cx="300" cy="190" r="17" />
        <circle cx="300" cy="190" r="6" />
        <path class="peg" d="M286 236h46" />
      </g>
      {of === 'hanging' && <path d={`M262 ${GROUND + raised}h84M276 ${GROUND + raised} 296 ${212 + down}h28l12 ${GROUND + raised - 212 - down}`} />}
      {of.startsWith('aboard') && <Rider down={down} standing={rides.value === 'standing'} />}
      <circle cx={AXLE.x} cy={AXLE.y} r="13" class="hub" />
      {of !== 'dot' && <Tape top={dot.y} />}
      <circle class="hand dot" cx={dot.x} cy={dot.y} r="7" />
      <circle class="hand dot" cx={AXLE.x} cy={AXLE.y} r={of === 'dot' ? 5 : 7} />
      {of === 'dot' && <path class="hand plumb" d={`M${AXLE.x} ${AXLE.y}V${dot.y}`} />}
      <path class="leader" d={`M${dot.x + 8} ${dot.y - 8} 132 ${dot.y - 26}M${AXLE.x + 8} ${AXLE.y + 9} 182 ${AXLE.y + 38}`} />
      <text x="136" y={dot.y - 28}>
        dot
      </text>
      <text x="186" y={AXLE.y + 42}>
        middle of
        <tspan x="186" dy="20">
          the axle
        </tspan>
      </text>
      {(push || lift) && <Arrow up={lift} />}
    </svg>
  )
}

export function Wheel({ at }: { at: { x: number; y: number } }) {
  const spokes = Array.from({ length: 14 }, (_, i) => (i * Math.PI) / 7)
  return (
    <g>
      <circle class="knobs" cx={at.x} cy={at.y} r="72" />
      <circle class="tyre" cx={at.x} cy={at.y} r="69" />
      <circle cx={at.x} cy={at.y} r="47" />
      <path
        class="spokes"
        d={spokes.map((turn) => `M${(at.x + 13 * Math.cos(turn)).toFixed(1)} ${(at.y + 13 * Math.sin(turn)).toFixed(1)}L${(at.x + 47 * Math.cos(turn + 0.18)).toFixed(1)} ${(at.y + 47 * Math.sin(turn + 0.18)).toFixed(1)}`).join('')}
      />
    </g>
  )
}

function Tape({ top }: { top: number }) {
  const marks = Array.from({ length: Math.floor((AXLE.y - top) / 9) }, (_, i) => `M${AXLE.x - 8} ${AXLE.y - 9 * (i + 1)}h${i % 4 === 3 ? 11 : 6}`)
  return <path class="hand tape" d={`M${AXLE.x - 8} ${top}h16V${AXLE.y}h-16z${marks.join('')}`} />
}

/** From the hips down: sitting with bent knees, or standing on the pegs. */
const SITTING = 'M168 0C168 40 170 70 190 88 204 100 236 106 264 110L290 116 284 216 282 234H332Q338 226 326 222L308 216 320 110Q322 94 304 90L236 80Q222 74 222 54L226 0Z'
const STANDING = 'M216 0C222 30 262 74 276 116L284 216 282 234H332Q338 226 326 222L308 216 308 112C304 70 282 40 280 0Z'

function Rider({ down, standing }: { down: number; standing: boolean }) {
  return <path class="rider" transform={`translate(0 ${down})`} d={(standing ? STANDING : SITTING).replace(/^M(\d+) 0/, `M$1 ${-down}`)} />
}

export function Arrow({ up }: { up: boolean }) {
  return (
    <g class="hand">
      <path d={up ? 'M34 52V8M26 18 34 8 42 18' : 'M34 8V52M26 42 34 52 42 42'} />
      <text x="54" y="20">
        {up ? 'lift 3 cm,' : 'push 3 cm,'}
      </text>
      <text x="54" y="40">
        let go
      </text>
    </g>
  )
}
