import { Mark } from '../figure/Mark.tsx'
import { numberText } from '../figure/text.ts'
import { type Geometry, hasBand } from './geometry.ts'
import { inOneRow, inRows, type Placed, spread, type Wish } from './labels.ts'
import type { Measure } from './measure.ts'
import { endWords, OVERLAYS, overlayName, type Shown, wantedForce } from './words.ts'

const LINE = 22
const BOLDER = 10 // px that a figure is wider set heavy
const AXIS_END = 14 // px that labels may reach past the axis

export interface EndLabel {
  key: string
  text: string
  force: number
}

/** What stands at full travel, in the order in which it takes the place next to the curve. */
export function endLabels(shown: Shown, brief = false): EndLabel[] {
  const { curve, beside } = shown
  const last = (series: number[]) => series.at(-1)!
  const label = (key: EndLabel['key'], name: string, force: number): EndLabel => ({ key, text: `${name} ${numberText(force, 1)}`, force })
  return [
    ...(hasBand(curve) ? [label('slow', 'settled', last(curve.slow)), label('fast', 'sudden', last(curve.fast))] : [label('springs', 'springs', last(curve.springs))]),
    ...(curve.rubber ? [label('rubber', 'with rubber', last(curve.rubber))] : []),
    ...beside.map((one) => label(one.kind, overlayName(one), last(one.curve.working))),
    { key: 'end', text: endWords(shown, brief), force: shown.setup?.end_force.value ?? last(curve.working) },
  ]
}

const widthOf = (key: EndLabel['key'], text: string, measure: Measure): number => measure(text) + (key === 'end' ? BOLDER : 0)

/** Beside a turned plot there is room for the figure alone. */
const short = (text: string): string => text.replace(/,.*/, '').replace(' kN', '').replace('full travel', 'full')

export const widthBeside = (labels: EndLabel[], measure: Measure): number =>
  Math.max(...labels.map(({ key, text }) => widthOf(key, short(text), measure))) + 18

/** Stroke up: rows over the plot. */
export function rowsOver(labels: EndLabel[], { force, frame }: Geometry, measure: Measure): Placed[] {
  const at = (label: EndLabel) => Math.min(force(label.force), frame.right)
  const wish = (label: EndLabel): Wish => ({ key: label.key, text: label.text, at: at(label), width: widthOf(label.key, label.text, measure) })
  return frame.start === undefined ? inRows(labels.map(wish), 0, frame.right) : inFewRows(labels, wish, frame.start, frame.right + AXIS_END, measure)
}

/** In little room: what belongs to the curve in one row, what lies beside it in the next, and over them the last, which its bar marks. */
function inFewRows(labels: EndLabel[], wish: (label: EndLabel) => Wish, start: number, to: number, measure: Measure): Placed[] {
  const besides = (label: EndLabel) => label.key in OVERLAYS || label.key === 'rubber'
  const own = labels.slice(0, -1).filter((label) => !besides(label))
  const others = labels.filter(besides)
  const last = labels.at(-1)!
  const texts = [last.text, last.text.replace(/,.*/, ''), short(last.text)]
  const end = texts.map((text) => wish({ ...last, text })).find((one) => one.width <= to - start) ?? wish({ ...last, text: '' })
  const groups = [own, others].filter((row) => row.length > 0).map((row) => row.map(wish))
  // The axis' own words stand in the first row: what has no room beside them stands over them.
  for (const [from, lift] of [[start + measure('mm') + 8, 0], [start, 1]] as const) {
    const rows = groups.map((row) => inOneRow(row, from, to))
    if (rows.some((row) => row === null)) continue
    return [...rows.flatMap((row, i) => row!.map((one) => ({ ...one, row: i + lift }))), { ...end, row: rows.length + lift, left: to - end.width }]
  }
  return inRows([...groups.flat(), end], start, to).map((one) => ({ ...one, row: one.row + 1 }))
}

export const rowsHeight = (rows: { row: number }[]): number => (Math.max(...rows.map((one) => one.row)) + 1) * LINE + 12

export function EndLabels({ place, shown, measure }: { place: Geometry; shown: Shown; measure: Measure }) {
  const labels = endLabels(shown, place.frame.start !== undefined)
  return (
    <g>
      {place.turned ? <Beside place={place} labels={labels} /> : <Over place={place} labels={labels} measure={measure} />}
      <Mark kind="end" {...spot(place, labels.at(-1)!.force)} lying={place.turned} />
      <Target place={place} shown={shown} />
    </g>
  )
}

function Over({ place, labels, measure }: { place: Geometry; labels: EndLabel[]; measure: Measure }) {
  const { top, start } = place.frame
  const rows = rowsOver(labels, place, measure)
  return (
    <>
      {rows
        .filter((one) => start === undefined || one.key !== 'end')
        .map(({ key, at, left, row, width }) => (
          <path key={key} class="leader" d={`M${at} ${top - 2}L${Math.min(Math.max(at, left + 4), left + width - 6)} ${top - 12 - row * LINE}`} />
        ))}
      {rows.map(({ key, text, left, row }) => (
        <g key={key} data-end={key}>
          <text class={`cased end-${key}`} x={left} y={top - 16 - row * LINE}>
            <Words text={text} strong={key === 'end'} />
          </text>
        </g>
      ))}
    </>
  )
}

/** The figure at full travel is the one that counts. */
function Words({ text, strong }: { text: string; strong: boolean }) {
  const [, before, figure, after] = (strong && /^(\D*)([\d.]+ kN|[\d.]+)(.*)$/.exec(text)) || ['', text, '', '']
  return (
    <>
      {before}
      {figure && <tspan class="figure">{figure}</tspan>}
      {after}
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
            <Words text={text} strong={key === 'end'} />
          </text>
        </g>
      ))}
    </>
  )
}

/** The force wanted at the end, as a tick across the end of travel. */
function Target({ place, shown }: { place: Geometry; shown: Shown }) {
  const wanted = wantedForce(shown)
  if (wanted === null) return null
  const { x, y } = spot(place, wanted)
  return <path class="target" data-target d={place.turned ? `M${x} ${y}h8` : `M${x} ${y}v-8`} />
}

function spot(place: Geometry, force: number): { x: number; y: number } {
  const [x, y] = place.at(place.travel, force)
  return { x, y }
}
