import type { ComponentChildren } from 'preact'
import { useId } from 'preact/hooks'
import type { DrawnLeg, Section } from '../../core/report.ts'
import { theme } from '../../store/theme.ts'
import { frameOf } from '../chart/Drawing.tsx'
import { textWidth } from '../chart/measure.ts'
import { placed, Plot } from '../chart/Plot.tsx'
import { spread } from '../chart/labels.ts'
import { description, type Shown } from '../chart/words.ts'
import { number } from '../figure/text.ts'
import { useFonts, useWidth } from '../figure/useWidth.ts'
import { level, overRim, partAt, type PartName, type Place, read, tall, upright } from './layout.ts'
import type { LegProps } from './Leg.tsx'
import { Lead, Lug, Point } from './Point.tsx'
import { LaidOver, overLine } from './LaidOver.tsx'
import { GapDimension, LegSection } from './Tubes.tsx'
import { useHold } from './useStroke.ts'
import { legDescription, type Line, linesAt } from './words.ts'

const WIDEST = 560
const DESK = 1000
const SLOT = 56
const LINE = 24
const TICKS = 44
const BELOW = 54
const UNDER_LUG = 30

export interface Seen extends LegProps {
  section: Section
  leg: DrawnLeg
  stroke: number
  last: number
  force: number | null
  shown: Shown
  oneSpring: boolean
}

/** The leg upright, the chart hung beside it: stroke runs up with the axle. */
export function Beside(seen: Seen) {
  const { place, width } = useWidth<HTMLDivElement>()
  useFonts()
  void theme.value
  return (
    <div class="leg-room" ref={place}>
      {width > 0 && <Block {...seen} width={Math.min(width, WIDEST)} desk={innerWidth >= DESK} />}
    </div>
  )
}

/** Everything's place: the chart's zero is where the lug hangs, so the leg comes down where what stands over the chart needs room. */
function arrange({ leg, section, shown, stroke, over }: Seen, width: number, desk: boolean) {
  const first = upright(leg, desk, 0)
  const { lug } = tall(leg)
  const start = first.right
  const plot = section.travel * first.scale
  const alone = frameOf(shown, width, plot, false, { start, left: start + TICKS })
  const lines = [...linesAt(section, leg, stroke), ...overLine(over, stroke)]
  const room = 3 * SLOT + lines.length * LINE + alone.top
  const rim = Math.max(overRim(leg, desk) + 4, room - (lug - section.travel) * first.scale)
  const place = upright(leg, desk, rim)
  const bottom = place.y(lug)
  const frame = { ...alone, top: bottom - plot, bottom }
  return { place, frame, lines, start, linesFrom: frame.top - alone.top - lines.length * LINE, height: place.y(tall(leg).foot) + Math.max(BELOW - 20 * first.scale, UNDER_LUG) }
}

function Block({ width, desk, ...seen }: Seen & { width: number; desk: boolean }) {
  const { section, leg, stroke, last, force, shown, oneSpring, onPart } = seen
  const id = `leg${useId()}`
  const { place, frame, lines, start, linesFrom, height } = arrange(seen, width, desk)
  const chart = placed(shown, frame, false)
  const mid = (x: number) => (x - place.centre) / (2 * place.scale)
  const hold = { stroke, last, scale: place.scale, along: 'y' as const }
  const column = useHold<HTMLDivElement>({ ...hold, onTap: (x, y) => onPart?.(partAt(section, leg, stroke, (y - place.rim) / place.scale, mid(x))) })
  const plot = useHold<HTMLDivElement>(hold)
  return (
    <div class="leg-block" style={{ height: `${height}px` }}>
      <svg class="drawing leg-drawing" viewBox={`0 0 ${width} ${height}`} width={width} height={height} role="img" aria-label={`${legDescription(section, leg)} ${description(shown)}`} data-chart="front" data-turned="false">
        <Lead place={chart} stroke={stroke} from={place.centre + lugHalf(leg, place)} />
        <Plot shown={shown} place={chart} id={id} strokeWords="mm" oneSpring={oneSpring} />
        <LegSection section={section} leg={leg} stroke={stroke} place={place} dots={`url(#${id}-gas)`} />
        <LaidOver over={seen.over} own={{ section, leg }} stroke={stroke} place={place} />
        <GapDimension leg={leg} place={place} />
        <Lines lines={lines} room={width - start} x={start} y={linesFrom} to={{ x: place.centre + place.half(48), y: place.y(level(section, leg, stroke)) }} />
        <Lug place={place} foot={place.y(tall(leg).foot - stroke)} />
        <Point shown={shown} place={chart} stroke={stroke} force={force} />
      </svg>
      <div class="leg-hold" ref={column} style={{ width: `${start - 6}px`, height: `${height}px` }} data-hold="leg" />
      <div class="leg-hold" ref={plot} style={{ left: `${frame.left}px`, top: `${frame.top}px`, width: `${width - frame.left}px`, height: `${frame.bottom - frame.top}px` }} data-hold="chart" />
      <Slots {...seen} place={place} start={start} until={linesFrom} />
    </div>
  )
}

const lugHalf = (leg: DrawnLeg, place: Place): number => place.half(leg.parts.find((part) => part.name === 'axle lug')!.outside)

/** Where the oil stands and what the gas does, led to the level. */
function Lines({ lines, room, x, y, to }: { lines: Line[]; room: number; x: number; y: number; to: { x: number; y: number } }) {
  const narrow = lines.some((line) => textWidth(line.text) > room)
  return (
    <g class="leg-lines">
      <path class="leader" d={`M${to.x} ${to.y}L${x - 4} ${y + LINE / 2}`} />
      {lines.map(({ key, text, brief }, i) => (
        <text key={key} x={x} y={y + LINE * i + 17} data-line={key}>
          {narrow ? brief : text}
        </text>
      ))}
    </g>
  )
}

/** What turns preload, gap and springs, each at the height of its part. */
function Slots({ place, start, until, ...seen }: Seen & { place: Place; start: number; until: number }) {
  const { section, leg, stroke, shown, onPart } = seen
  const spring = leg.springs[0]
  const cap = leg.parts.find((part) => part.name === 'cap')!
  const coilAt = spring ? (read(section, spring.top, stroke) + read(section, spring.bottom, stroke)) / 2 : leg.gap
  const rate = shown.setup?.pair ? null : shown.setup?.rate
  const all: { key: string; part: PartName; at: number; slot: ComponentChildren; text: string; to: number }[] = [
    { key: 'preload', part: 'cap', at: place.y((cap.top + cap.bottom) / 2), slot: seen.preload, text: shown.setup && spring ? `Preload ${Math.round(shown.setup.preload.value)} mm` : 'Cap', to: place.half(50) },
    { key: 'gap', part: 'gap', at: place.y(leg.gap * 0.6), slot: seen.gap, text: `Gap ${Math.round(leg.gap)} mm`, to: place.half(50) },
    spring
      ? { key: 'springs', part: 'springs', at: place.y(Math.min(coilAt, leg.gap * 1.8)), slot: seen.springs, text: rate ? `Springs ${number(rate)} N/mm` : 'Springs', to: place.half(spring.mean) }
      : { key: 'springs', part: section.kind === 'air leg' ? 'air spring' : 'cartridge', at: place.y(leg.gap * 1.8), slot: seen.springs, text: section.kind === 'air leg' ? 'Air spring' : 'Damper', to: place.half(40) },
  ]
  const heights = spread(
    all.map((one) => one.at),
    SLOT,
    SLOT / 2,
    until - SLOT / 2,
  )
  return (
    <>
      <svg class="drawing leg-leaders" aria-hidden="true" width={start} height={until}>
        {all.map(({ key, at, to }, i) => (
          <path key={key} class="leader" d={`M${place.centre + to} ${at}L${start - 8} ${heights[i]}`} />
        ))}
      </svg>
      {all.map(({ key, part, slot, text }, i) => (
        <div key={key} class="leg-slot" style={{ left: `${start}px`, top: `${heights[i]! - SLOT / 2}px` }} data-slot={key}>
          {slot ?? (
            <button type="button" class="link" onClick={() => onPart?.(part)}>
              {text} ›
            </button>
          )}
        </div>
      ))}
    </>
  )
}

