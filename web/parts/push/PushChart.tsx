import { signal } from '@preact/signals'
import type { PushReport } from '../../core/report.ts'
import { theme } from '../../store/theme.ts'
import { Axes } from '../chart/Axes.tsx'
import { type Geometry, joined } from '../chart/geometry.ts'
import { spread } from '../chart/labels.ts'
import { textWidth } from '../chart/measure.ts'
import { withUnit } from '../figure/text.ts'
import { useFonts, useWidth } from '../figure/useWidth.ts'
import { type Line, type Lines, linesOf, placed } from './curves.ts'
import '../chart/chart.css'

const LEFT = 52
const TOP = 32
const PLOT = 240
const BELOW = 54
const WIDEST = 560
const LINE = 21

const whole = signal(false)

/** Force over stroke, a line for each explanation and the points on it; at first against the likeliest, where they differ enough to be seen. */
export function PushChart({ push }: { push: PushReport }) {
  const { place, width } = useWidth<HTMLDivElement>()
  useFonts()
  void theme.value
  const few = push.rivals.length < 2
  return (
    <div class="chart push-chart">
      <div ref={place}>{width > 0 && <Drawing push={push} all={whole.value || few} width={Math.min(width, WIDEST)} />}</div>
      {!few && (
        <button type="button" class="link" aria-pressed={whole.value} onClick={() => (whole.value = !whole.value)}>
          Whole forces
        </button>
      )}
    </div>
  )
}

function Drawing({ push, all, width }: { push: PushReport; all: boolean; width: number }) {
  const lines = linesOf(push, all)
  const names = lines.lines.map(nameOf)
  const right = width - Math.max(...names.map((name) => textWidth(name))) - 20
  const bottom = TOP + PLOT
  const place = placed(lines, { left: LEFT, right, top: TOP, bottom })
  const likeliest = push.rivals[0]!.label.toLowerCase()
  return (
    <svg class="drawing" viewBox={`0 0 ${width} ${bottom + BELOW}`} width={width} height={bottom + BELOW} role="img" aria-label={description(push)} data-chart="push">
      <Axes place={place} strokeWords="stroke mm" forceWords={all ? 'N, one leg' : `N against ${likeliest}`} />
      {!all && <path class="push-zero" d={`M${LEFT} ${place.force(0)}H${right}`} />}
      {push.further?.tells && <path class="target" d={`M${place.stroke(push.further.stroke.value)} ${bottom}v-12`} />}
      {lines.lines.map((line) => (
        <path key={line.rivals[0]!.state} class={`push-line push-${line.rivals[0]!.state.replaceAll(' ', '-')}`} data-in-question={line.rivals[0]!.open} d={joined(line.at.map(([mm, newton]) => place.at(mm, newton)))} />
      ))}
      <Points lines={lines} place={place} />
      <Names lines={lines.lines} names={names} place={place} />
    </svg>
  )
}

function Points({ lines, place }: { lines: Lines; place: Geometry }) {
  return (
    <g>
      {lines.spots.map(({ stroke, force, half }) => {
        const [x, y] = place.at(stroke, force)
        return (
          <g key={stroke}>
            <path class="push-off" d={`M${x} ${place.force(force - half)}V${place.force(force + half)}`} />
            <circle class="push-point" cx={x} cy={y} r={5} />
          </g>
        )
      })}
    </g>
  )
}

/** Each line's name at its end, with a leader where it had to give way. */
function Names({ lines, names, place }: { lines: Line[]; names: string[]; place: Geometry }) {
  const { right, top, bottom } = place.frame
  const ends = lines.map(({ at }) => place.force(at.at(-1)![1]))
  const heights = spread(ends, LINE, top, bottom)
  return (
    <g>
      {names.map((name, i) => (
        <g key={name}>
          <path class="leader" d={`M${right + 2} ${ends[i]}L${right + 12} ${heights[i]}`} />
          <text x={right + 16} y={heights[i]! + 5}>
            {name}
          </text>
        </g>
      ))}
    </g>
  )
}

const SHORT: Record<PushReport['rivals'][number]['state'], string> = { open: 'as read', 'as built': 'as built', 'seal leaking': 'leaking', 'oil moved': 'oil moved', 'opened into one': 'opened' }

const nameOf = ({ rivals }: Line): string => rivals.map(({ state }) => SHORT[state]).join(', ')

function description(push: PushReport): string {
  const points = push.points.map(({ stroke, force }) => `${withUnit(force)} at ${withUnit(stroke)}`).join('; ')
  return `Force over stroke of the pushed leg. Read: ${points}. ${push.verdict}`
}
