import { useId } from 'preact/hooks'
import { Axes } from './Axes.tsx'
import { EndLabels, endLabels, rowsHeight, rowsOver, widthBeside } from './EndLabels.tsx'
import { FieldNames, Fields } from './Fields.tsx'
import { curvePath, type Frame, geometry } from './geometry.ts'
import { textWidth } from './measure.ts'
import { SagLabels } from './SagLabels.tsx'
import { description, forceWords, type Shown, strokeWords } from './words.ts'

const LEFT = 44
const BELOW = 54

interface Size {
  width: number
  plot: number
}

/** The chart itself: one drawing for screen and paper. */
export function Drawing({ shown, width, plot, turned, oneSpring }: Size & { shown: Shown; turned: boolean; oneSpring: boolean }) {
  const id = `chart${useId()}`
  const { curve, found, tried } = shown
  const curves = [curve, ...(found ? [found] : []), ...(tried ? [tried] : [])]
  const place = geometry(curves, frameOf(shown, width, plot, turned), turned)
  const height = place.frame.bottom + BELOW
  return (
    <svg class="drawing" viewBox={`0 0 ${width} ${height}`} width={width} height={height} role="img" aria-label={description(shown)} data-chart={shown.end} data-turned={turned}>
      <Fields place={place} curve={curve} id={id} />
      {found && <Found d={curvePath(place, found, 'working')} />}
      {tried && <path class="curve-tried" data-curve="tried" d={curvePath(place, tried, 'working')} />}
      <path class="curve" data-curve="working" d={curvePath(place, curve, 'working')} />
      <FieldNames place={place} curve={curve} measure={textWidth} />
      <Axes place={place} strokeWords={strokeWords(shown.end)} forceWords={forceWords(shown.end, oneSpring)} />
      <EndLabels place={place} shown={shown} measure={textWidth} />
      <SagLabels place={place} shown={shown} measure={textWidth} />
    </svg>
  )
}

/** As found, dashed over a casing of the ground so that it reads on every field. */
function Found({ d }: { d: string }) {
  return (
    <g class="found" data-curve="found">
      <path class="casing" d={d} />
      <path class="curve-found" d={d} />
    </g>
  )
}

/** Room for axes and labels round the plot. */
function frameOf(shown: Shown, width: number, plot: number, turned: boolean): Frame {
  const labels = endLabels(shown)
  if (turned) {
    return { left: LEFT, right: width - widthBeside(labels, textWidth), top: 32, bottom: 32 + plot }
  }
  const right = width - 14
  // Where the rows lie does not hang on the scale's height, so a first scale of the same width tells how many there are.
  const most = geometry([shown.curve, ...(shown.found ? [shown.found] : []), ...(shown.tried ? [shown.tried] : [])], { left: LEFT, right, top: 0, bottom: plot }, false)
  const top = rowsHeight(rowsOver(labels, most.force, right, textWidth)) + 22
  return { left: LEFT, right, top, bottom: top + plot }
}
