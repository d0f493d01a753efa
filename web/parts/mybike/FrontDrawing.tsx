import { rides } from '../../store/mybike.ts'
import { Arrow, Wheel } from './Drawing.tsx'
import './drawing.css'

/** How far up the leg the clamp stands over the axle. */
const LENGTHS: Record<string, number> = { dot: 150, hanging: 170, pushed: 150, lifted: 153, 'aboard pushed': 124, 'aboard lifted': 128 }
const AXLE = { x: 250, y: 214 }
const GROUND = 290
/** Up the leg: it leans back by its rake. */
const UP = { x: -0.44, y: -0.9 }

const TOLD: Record<string, string> = {
  dot: 'The bike from the side: a dot on the lower clamp that holds the fork legs.',
  hanging: 'The front wheel hangs off the ground. The tape runs along the fork leg, from the middle of the axle to the dot.',
  pushed: 'The bike alone on its wheels. The bars were pushed down and let go. The tape runs along the leg, from the axle to the dot.',
  lifted: 'The bike alone on its wheels. The bars were lifted and let go. The tape runs along the leg, from the axle to the dot.',
  'aboard pushed': 'The rider is on the bike. The bars were pushed down and let go. The tape runs along the leg, from the axle to the dot.',
  'aboard lifted': 'The rider is on the bike. The bars were lifted and let go. The tape runs along the leg, from the axle to the dot.',
}

/** The front of the bike from the side, and where the tape goes along the leg. Our own drawing. */
export function FrontDrawing({ of }: { of: string }) {
  const long = LENGTHS[of] ?? 150
  const along = (up: number) => ({ x: AXLE.x + UP.x * up, y: AXLE.y + UP.y * up })
  const dot = along(long)
  // Drawn for a clamp 150 up the leg; with the sag it slides down along it.
  const moved = { x: dot.x - along(150).x, y: dot.y - along(150).y }
  const label = Math.max(dot.y - 24, 70) // below the arrow
  const raised = of === 'hanging' ? 8 : 0
  return (
    <svg class="mybike-drawing" viewBox="0 0 358 310" role="img" aria-label={TOLD[of]}>
      <path class="ground" d={`M4 ${GROUND + raised}H354`} />
      <Wheel at={AXLE} />
      <path class="shock" d={`M${AXLE.x} ${AXLE.y}L${along(80).x} ${along(80).y}`} />
      <g transform={`translate(${moved.x} ${moved.y})`}>
        <path class="shock" d={`M${along(70).x} ${along(70).y}L${along(200).x} ${along(200).y}`} stroke-width="18" />
        <path class="shock inner" d={`M${along(72).x} ${along(72).y}L${along(198).x} ${along(198).y}`} />
        <path class="arm" d={`M${along(150).x - 20} ${along(150).y + 9}L${along(150).x + 20} ${along(150).y - 9}M${along(190).x - 18} ${along(190).y + 8}L${along(190).x + 18} ${along(190).y - 8}`} />
        <path d="M164 42 132 34M168 56C130 56 96 66 60 78L20 84M158 74 110 112 84 186 132 240 40 244" />
        <circle cx="70" cy="238" r="16" />
      </g>
      {of === 'hanging' && <path d={`M64 ${GROUND + raised}h84M78 ${GROUND + raised} 94 ${254 + moved.y}h28l12 ${GROUND + raised - 254 - moved.y}`} />}
      {of.startsWith('aboard') && <Rider moved={moved} standing={rides.value === 'standing'} />}
      <circle cx={AXLE.x} cy={AXLE.y} r="13" class="hub" />
      {of !== 'dot' && <Tape long={long} />}
      <circle class="hand dot" cx={dot.x} cy={dot.y} r="7" />
      <circle class="hand dot" cx={AXLE.x} cy={AXLE.y} r={of === 'dot' ? 5 : 7} />
      {of === 'dot' && <path class="hand plumb" d={`M${AXLE.x} ${AXLE.y}L${dot.x} ${dot.y}`} />}
      <path class="leader" d={`M${dot.x + 9} ${dot.y - 5} 236 ${label + 2}M${AXLE.x + 5} ${AXLE.y + 11} 284 ${GROUND + 2}`} />
      <text x="240" y={label}>
        dot on the
        <tspan x="240" dy="20">
          lower clamp
        </tspan>
      </text>
      <text x="288" y={GROUND + 17}>
        axle
      </text>
      {(of.endsWith('pushed') || of.endsWith('lifted')) && (
        <g transform="translate(200 0)">
          <Arrow up={of.endsWith('lifted')} />
        </g>
      )}
    </svg>
  )
}

function Tape({ long }: { long: number }) {
  const marks = Array.from({ length: Math.floor(long / 9) }, (_, i) => `M-8 ${-9 * (i + 1)}h${i % 4 === 3 ? 11 : 6}`)
  const turn = (Math.atan2(UP.x, -UP.y) * 180) / Math.PI
  return <path class="hand tape" transform={`translate(${AXLE.x} ${AXLE.y}) rotate(${turn})`} d={`M-8 ${-long}h16V0h-16z${marks.join('')}`} />
}

/** Arms to the bars, and the leg on the peg: sitting, or standing. */
const SITTING = 'M20 0C40 6 66 10 84 16L136 28 134 40 78 34C60 30 40 34 30 44L22 84 96 116 84 226H60L70 132 8 104V0Z'
const STANDING = 'M34 0C54 2 70 6 88 14L136 28 134 40 84 30C74 30 66 36 62 48L92 128 84 226H60L66 136 30 60 20 0Z'

function Rider({ moved, standing }: { moved: { x: number; y: number }; standing: boolean }) {
  return <path class="rider" transform={`translate(${moved.x} ${moved.y})`} d={standing ? STANDING : SITTING} />
}
