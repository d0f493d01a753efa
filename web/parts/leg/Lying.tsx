import { useId } from 'preact/hooks'
import { theme } from '../../store/theme.ts'
import { frameOf } from '../chart/Drawing.tsx'
import { placed, Plot } from '../chart/Plot.tsx'
import { description, strokeWords } from '../chart/words.ts'
import { numberText } from '../figure/text.ts'
import { useFonts, useWidth } from '../figure/useWidth.ts'
import type { Seen } from './Beside.tsx'
import { lying, partAt, tall } from './layout.ts'
import { LaidOver, overLine } from './LaidOver.tsx'
import { GapDimension, LegSection } from './Tubes.tsx'
import { useHold } from './useStroke.ts'
import { legDescription, linesAt } from './words.ts'

const WIDEST = 560
const PLOT = 240
const BELOW = 54
const LINE = 24

/** Stroke along the bottom: the leg lies over the chart, its axle to the left, and moves with the stroke. */
export function Lying(seen: Seen) {
  const { place, width } = useWidth<HTMLDivElement>()
  useFonts()
  void theme.value
  return (
    <div class="leg-room" ref={place}>
      {width > 0 && <Block {...seen} width={Math.min(width, WIDEST)} />}
    </div>
  )
}

function Block({ width, ...seen }: Seen & { width: number }) {
  const { section, leg, stroke, last, force, shown, oneSpring, onPart } = seen
  const id = `lying${useId()}`
  const place = lying(leg, width)
  const lines = [...linesAt(section, leg, stroke), ...overLine(seen.over, stroke)]
  const said = lines.length * LINE
  const deep = place.right
  const alone = frameOf(shown, width, PLOT, true)
  const over = deep + said
  const frame = { ...alone, top: alone.top + over, bottom: alone.bottom + over }
  const chart = placed(shown, frame, true)
  const height = frame.bottom + BELOW
  // Turned by a right angle the rim is at the right, what is under it further left.
  const across = (mm: number) => width - place.y(mm)
  const lug = across(tall(leg).lug - stroke)
  const x = chart.stroke(stroke)
  const y = force === null ? frame.bottom : chart.force(force)
  const text = force === null ? `at ${Math.round(stroke)} mm` : `${numberText(force, 1)} kN at ${Math.round(stroke)}`
  const hold = { stroke, last, along: 'x' as const }
  const column = useHold<HTMLDivElement>({ ...hold, scale: place.scale, onTap: (px, py) => onPart?.(partAt(section, leg, stroke, (width - px - place.rim) / place.scale, (py - place.centre) / (2 * place.scale))) })
  const plot = useHold<HTMLDivElement>({ ...hold, scale: (frame.right - frame.left) / section.travel })
  return (
    <div class="leg-block" style={{ height: `${height}px` }}>
      <svg class="drawing leg-drawing" viewBox={`0 0 ${width} ${height}`} width={width} height={height} role="img" aria-label={`${legDescription(section, leg)} ${description(shown)}`} data-chart="front" data-turned="true">
        <g class="leg-point">
          <path d={`M${lug} ${said + place.centre + place.half(50)}L${x} ${frame.top - 4}V${frame.top}`} />
        </g>
        <Plot shown={shown} place={chart} id={id} strokeWords={strokeWords('front')} oneSpring={oneSpring} />
        <g transform={`translate(${width},${said}) rotate(90)`}>
          <LegSection section={section} leg={leg} stroke={stroke} place={place} dots={`url(#${id}-gas)`} />
          <LaidOver over={seen.over} own={{ section, leg }} stroke={stroke} place={place} />
          <GapDimension leg={leg} place={place} />
        </g>
        {lines.map(({ key, text }, i) => (
          <text key={key} x={0} y={LINE * i + 17} data-line={key}>
            {text}
          </text>
        ))}
        <g class="leg-point" data-point={stroke}>
          <path d={`M${x} ${frame.top}V${y}`} />
          {force !== null && <circle cx={x} cy={y} r={5.5} />}
          <text class="cased" x={width} y={frame.top - 12} text-anchor="end">
            {text}
          </text>
        </g>
      </svg>
      <div class="leg-hold" ref={column} style={{ top: `${said}px`, width: `${width}px`, height: `${deep}px` }} data-hold="leg" />
      <div class="leg-hold" ref={plot} style={{ left: `${frame.left}px`, top: `${frame.top}px`, width: `${frame.right - frame.left}px`, height: `${PLOT}px` }} data-hold="chart" />
    </div>
  )
}
