import { Mark } from '../figure/Mark.tsx'
import { numberText } from '../figure/told.ts'
import { type Geometry, hasBand } from './geometry.ts'
import { inRows, spread } from './labels.ts'
import type { Measure } from './measure.ts'
import { endWords, type OverlayKind, OVERLAYS, type Shown } from './words.ts'

const LINE = 22
const FIRST_CLEAR = 64 // px of "mm of stroke" that reach over the plot
const STRONG = 760 // the heaviest that a theme sets

export interface EndLabel {
  key: 'springs' | 'slow' | 'fast' | 'end' | 'rubber' | OverlayKind
  text: string
  force: number
}

/** What stands at full travel, in the order in which it takes the place next to the curve. */
export function endLabels(shown: Shown): EndLabel[] {
  const { curve, beside } = shown
  const last = (series: number[]) => series.at(-1)!
  const label = (key: EndLabel['key'], name: string, force: number): EndLabel => ({ key, text: `${name} ${numberText(force, 1)}`, force })
  return [
    ...(hasBand(curve) ? [label('slow', 'settled', last(curve.slow)), label('fast', 'sudden', last(curve.fast))] : [label('springs', 'springs', last(curve.springs))]),
    ...(curve.rubber ? [label('rubber', 'with rubber', last(curve.rubber))] : []),
    ...beside.map((one) => label(one.kind, OVERLAYS[one.kind], last(one.curve.working))),
    { key: 'end', text: endWords(shown), force: shown.setup?.end_force.value ?? last(curve.working) },
  ]
}

const widthOf = (key: EndLabel['key'], text: string, measure: Measure): number => measure(text, key === 'end' ? STRONG : undefined)

/** Beside a turned plot there is room for the figure alone. */
const short = (text: string): string => text.replace(/,.*/, '').replace(' kN', '').replace('full travel', 'full')

export const widthBeside = (labels: EndLabel[], measure: Measure): number =>
  Math.max(...labels.map(({ key, text }) => widthOf(key, short(text), measure))) + 18

/** Stroke up: rows over the plot, the first one kept off the axis' own words. */
export function rowsOver(labels: EndLabel[], place: Geometry, measure: Measure) {
  const { left, right, start = 0 } = place.frame
  const rows = inRows(
    labels.map(({ key, text, force }) => ({ key, text, at: place.force(force), width: widthOf(key, text, measure) })),
    start,
    right,
  )
  const lift = rows.some((one) => one.row === 0 && one.left < left + FIRST_CLEAR) ? 1 : 0
  return rows.map((one) => ({ ...one, row: one.row + lift }))
}

export const rowsHeight = (rows: { row: number }[]): number => (Math.max(...rows.map((one) => one.row)) + 1) * LINE + 12

export function EndLabels({ place, shown, measure }: { place: Geometry; shown: Shown; measure: Measure }) {
  const labels = endLabels(shown)
  return (
    <g>
      {place.turned ? <Beside place={place} labels={labels} /> : <Over place={place} labels={labels} measure={measure} />}
      <Mark kind="end" {...spot(place, labels.at(-1)!.force)} lying={place.turned} />
      <Target place={place} shown={shown} />
    </g>
  )
}

function Over({ place, labels, measure }: { place: Geometry; labels: EndLabel[]; measure: Measure }) {
  const { top } = place.frame
  return (
    <>
      {rowsOver(labels, place, measure).map(({ key, text, at, left, row }) => (
        <g key={key} data-end={key}>
          <path class="leader" d={`M${at} ${top - 2}V${top - 12 - row * LINE}`} />
          <text class={`cased end-${key}`} x={left} y={top - 16 - row * LINE}>
            {text}
          </text>
        </g>
      ))}
    </>
  )
}

/** Turned: a column to the right of the plot. */
function Beside({ place, labels }: { place: Geometry; labels: EndLabel[] }) {
  const { top, bottom, right } = place.frame
  const shown = labels.map((label) => ({ ...label, text: short(label.text) }))
  const heights = spread(
    shown.map((label) => place.force(label.force)),
    LINE,
    top,
    bottom,
  )
  return (
    <>
      {shown.map(({ key, text, force }, i) => (
        <g key={key} data-end={key}>
          <path class="leader" d={`M${right + 2} ${place.force(force)}L${right + 12} ${heights[i]}`} />
          <text class={`cased end-${key}`} x={right + 16} y={heights[i]! + 5}>
            {text}
          </text>
        </g>
      ))}
    </>
  )
}

/** The force wanted at the end, as a tick across the end of travel. */
function Target({ place, shown }: { place: Geometry; shown: Shown }) {
  const { end } = shown.report.targets
  if (!end || end.unit !== 'kN') return null
  const { x, y } = spot(place, end.value)
  return <path class="target" data-target d={place.turned ? `M${x} ${y}h8` : `M${x} ${y}v-8`} />
}

function spot(place: Geometry, force: number): { x: number; y: number } {
  const [x, y] = place.at(place.travel, force)
  return { x, y }
}
