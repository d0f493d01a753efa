import { max } from 'd3-array'
import { number, numberText, withUnit } from '../figure/text.ts'
import { Mark } from '../figure/Mark.tsx'
import { type Geometry, reader } from './geometry.ts'
import { spread } from './labels.ts'
import type { Measure } from './measure.ts'
import type { Shown } from './words.ts'

const LINE = 24

interface Sag {
  kind: 'free' | 'rider'
  text: string
  mm: number
  x: number
  y: number
}

/** Both sags, and where their labels stand. */
export function sagPlaces(place: Geometry, shown: Shown, measure: Measure): { sags: Sag[]; spots: Spot[] } {
  const { setup, curve } = shown
  if (!setup) return { sags: [], spots: [] }
  const slow = reader(curve, 'slow')
  const point = (kind: 'free' | 'rider', mm: number, text: string): Sag => {
    const [x, y] = place.at(mm, slow(mm))
    return { kind, mm, text, x, y }
  }
  // Beside the leg the strip, close under it, tells unit and +/-.
  const figure = place.frame.start === undefined ? withUnit : number
  const sags = [
    point('free', setup.free_sag.value, `free sag ${figure(setup.free_sag)}`),
    point('rider', setup.rider_sag.value, `rider sag ${figure(setup.rider_sag)}`),
  ]
  return { sags, spots: place.turned ? under(place, sags) : beside(place, shown, sags, measure) }
}

/** Both sags as labelled points on the curve on which they were worked out: the settled one. */
export function SagLabels({ place, shown, measure }: { place: Geometry; shown: Shown; measure: Measure }) {
  const { sags, spots } = sagPlaces(place, shown, measure)
  if (sags.length === 0) return null
  const load = place.turned || place.frame.start !== undefined ? '' : `load ${numberText(shown.report.load.aboard.value / 1000, 2)} kN`
  const after = load && `, ${load}`
  const fits = spots[1]!.x + measure(sags[1]!.text + after) <= place.frame.right
  return (
    <g>
      {sags.map((sag, i) => (
        <g key={sag.kind} data-sag={sag.kind}>
          <path class="leader" d={leader(sag, spots[i]!)} />
          <Mark kind={sag.kind} x={sag.x} y={sag.y} />
          <text class="cased" x={spots[i]!.x} y={spots[i]!.y + 5}>
            {sag.text}
            {sag.kind === 'rider' && fits && after}
          </text>
          {sag.kind === 'rider' && !fits && load && (
            <text class="cased" x={spots[i]!.x} y={spots[i]!.y + 5 - LINE * 0.8}>
              {load}
            </text>
          )}
        </g>
      ))}
    </g>
  )
}

type Spot = { x: number; y: number }

/** Stroke up: beside the points, to the right of every curve at that height. */
function beside(place: Geometry, { curve, beside: others }: Shown, sags: Sag[], measure: Measure): Spot[] {
  const heights = spread(
    sags.map((sag) => sag.y),
    LINE,
    place.frame.top + LINE / 2,
    place.frame.bottom - LINE / 2,
  )
  const right = (y: number) => {
    const mm = place.strokeScale.invert(y - LINE / 2)
    const forces = [reader(curve, 'fast')(mm), ...others.map((one) => reader(one.curve, 'working')(mm))]
    return place.force(max(forces)!)
  }
  const room = place.frame.right - max(sags, (sag) => measure(sag.text))!
  const x = Math.min(room, max(heights, right)! + 16)
  return heights.map((y) => ({ x, y }))
}

/** Turned: to the right of the points, which is under the curves. */
function under(place: Geometry, sags: Sag[]): Spot[] {
  const { top, bottom } = place.frame
  const heights = spread(
    sags.map((sag) => sag.y),
    LINE,
    top + LINE / 2,
    bottom - LINE / 2,
  )
  const x = max(sags, (sag) => sag.x)! + 22
  return heights.map((y) => ({ x, y }))
}

function leader(sag: Sag, spot: Spot): string {
  return `M${sag.x + 8} ${sag.y}L${spot.x - 4} ${spot.y}`
}
