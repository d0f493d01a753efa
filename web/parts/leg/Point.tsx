import { textWidth } from '../chart/measure.ts'
import type { Geometry } from '../chart/geometry.ts'
import { sagPlaces } from '../chart/SagLabels.tsx'
import type { Shown } from '../chart/words.ts'
import { numberText } from '../figure/text.ts'
import type { Place } from './layout.ts'

const CLEAR = 22

interface PointProps {
  shown: Shown
  place: Geometry
  stroke: number
  /** Null where the curve is not this leg's: then the line ends at the axis. */
  force: number | null
}

/** The line from the lug's edge to the axis; it runs under the axis' figures. */
export function Lead({ place, stroke, from }: { place: Geometry; stroke: number; from: number }) {
  return (
    <g class="leg-point">
      <path d={`M${from} ${place.stroke(stroke)}H${place.frame.left}`} />
    </g>
  )
}

/** From the axis to the point that the leg is at. */
export function Point({ shown, place, stroke, force }: PointProps) {
  const y = place.stroke(stroke)
  const x = force === null ? place.frame.left : place.force(force)
  const text = force === null ? `at ${Math.round(stroke)} mm` : `${numberText(force, 1)} kN at ${Math.round(stroke)}`
  const width = textWidth(text, 680)
  const left = x + 12 + width <= place.frame.right + 10 ? x + 12 : Math.max(x - 12 - width, place.frame.left + 4)
  return (
    <g class="leg-point" data-point={stroke}>
      <path d={`M${place.frame.left} ${y}H${x}`} />
      {force !== null && <circle cx={x} cy={y} r={5.5} />}
      <text class="cased" x={left} y={labelHeight(y, left, width, shown, place) + 5}>
        {text}
      </text>
    </g>
  )
}

/** At the point's own height, or over the sags' labels where it would lie on them. */
function labelHeight(y: number, left: number, width: number, shown: Shown, place: Geometry): number {
  const { sags, spots } = sagPlaces(place, shown, textWidth)
  const hit = spots.filter((spot, i) => Math.abs(spot.y - y) < CLEAR && left < spot.x + textWidth(sags[i]!.text) && spot.x < left + width)
  return hit.length === 0 ? y : Math.min(...spots.map((spot) => spot.y)) - CLEAR
}

/** Both ways: the lug can be moved. */
export function Lug({ place, foot }: { place: Place; foot: number }) {
  const [x, top, low] = [place.centre, foot + 5, foot + 27]
  return <path class="leg-arrow" d={`M${x} ${top}V${low}M${x - 5} ${top + 6}L${x} ${top}L${x + 5} ${top + 6}M${x - 5} ${low - 6}L${x} ${low}L${x + 5} ${low - 6}`} />
}
