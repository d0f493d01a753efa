import { max } from 'd3-array'
import { told } from '../figure/told.ts'
import { Mark } from '../figure/Mark.tsx'
import { type Geometry, reader } from './geometry.ts'
import { spread } from './labels.ts'
import type { Shown } from './words.ts'

const LINE = 24

interface Sag {
  kind: 'free' | 'rider'
  text: string
  mm: number
  x: number
  y: number
}

/** Both sags as labelled points on the curve on which they were worked out: the slow one. */
export function SagLabels({ place, shown, measure }: { place: Geometry; shown: Shown; measure: (text: string) => number }) {
  const { setup, curve, report } = shown
  if (!setup) return null
  const slow = reader(curve, 'slow')
  const point = (kind: 'free' | 'rider', mm: number, text: string): Sag => {
    const [x, y] = place.at(mm, slow(mm))
    return { kind, mm, text, x, y }
  }
  const load = `, load ${(report.load.aboard.value / 1000).toFixed(2)} kN`
  const sags = [
    point('free', setup.free_sag.value, `free sag ${told(setup.free_sag)}`),
    point('rider', setup.rider_sag.value, `rider sag ${told(setup.rider_sag)}${place.turned ? '' : load}`),
  ]
  const spots = place.turned ? above(place, sags) : beside(place, shown, sags, measure)
  return (
    <g>
      {sags.map((sag, i) => (
        <g key={sag.kind} data-sag={sag.kind}>
          <path class="leader" d={leader(place, sag, spots[i]!)} />
          <Mark kind={sag.kind} x={sag.x} y={sag.y} />
          <text class="cased" x={spots[i]!.x} y={spots[i]!.y + 5}>
            {sag.text}
          </text>
        </g>
      ))}
    </g>
  )
}

type Spot = { x: number; y: number }

/** Stroke up: beside the points, to the right of every curve at that height. */
function beside(place: Geometry, { curve, found, tried }: Shown, sags: Sag[], measure: (text: string) => number): Spot[] {
  const heights = spread(
    sags.map((sag) => sag.y),
    LINE,
    place.frame.top + LINE / 2,
    place.frame.bottom - LINE / 2,
  )
  const right = (y: number) => {
    const mm = place.strokeScale.invert(y - LINE / 2)
    const forces = [reader(curve, 'fast')(mm), found && reader(found, 'working')(mm), tried && reader(tried, 'working')(mm)]
    return place.force(max(forces, (force) => force ?? 0)!)
  }
  const room = place.frame.right - max(sags, (sag) => measure(sag.text))!
  const x = Math.min(room, max(heights, right)! + 16)
  return heights.map((y) => ({ x, y }))
}

/** Turned: over the curves, in the corner they leave free; the point further left has the higher line. */
function above(place: Geometry, sags: Sag[]): Spot[] {
  return sags.map((sag, i) => ({ x: sag.x - 6, y: place.frame.top + LINE * (i + 0.5) }))
}

function leader(place: Geometry, sag: Sag, spot: Spot): string {
  return place.turned ? `M${sag.x} ${sag.y - 8}V${spot.y + 12}` : `M${sag.x + 8} ${sag.y}L${spot.x - 4} ${spot.y}`
}
