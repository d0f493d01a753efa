import { useId } from 'preact/hooks'
import { endLabels, rowsHeight, rowsOver, widthBeside } from './EndLabels.tsx'
import type { Frame } from './geometry.ts'
import { textWidth } from './measure.ts'
import { placed, Plot } from './Plot.tsx'
import { description, type Shown, strokeWords } from './words.ts'

const LEFT = 44
const BELOW = 54

interface Size {
  width: number
  plot: number
}

/** A chart that stands alone. */
export function Drawing({ shown, width, plot, turned, oneSpring }: Size & { shown: Shown; turned: boolean; oneSpring: boolean }) {
  const id = `chart${useId()}`
  const place = placed(shown, frameOf(shown, width, plot, turned), turned)
  const height = place.frame.bottom + BELOW
  return (
    <svg class="drawing" viewBox={`0 0 ${width} ${height}`} width={width} height={height} role="img" aria-label={description(shown)} data-chart={shown.end} data-turned={turned}>
      <Plot shown={shown} place={place} id={id} strokeWords={strokeWords(shown.end)} oneSpring={oneSpring} />
    </svg>
  )
}

/** Room for axes and labels round the plot. */
export function frameOf(shown: Shown, width: number, plot: number, turned: boolean, beside?: { start: number; left: number }): Frame {
  const labels = endLabels(shown, beside !== undefined)
  const left = beside?.left ?? LEFT
  if (turned) return { left, right: width - widthBeside(labels, textWidth), top: 32, bottom: 32 + plot }
  const right = width - 14
  // Where the rows lie does not hang on the scale's height, so a first scale of the same width tells how many there are.
  const first = placed(shown, { left, right, top: 0, bottom: plot, ...beside }, false)
  const top = rowsHeight(rowsOver(labels, first, textWidth)) + 22
  return { left, right, top, bottom: top + plot, ...beside }
}
