/** Where the side view's points and labels stand, in px. Forward is to the right, as the bike is seen from its right. */
import type { LinkageView } from '../../core/report.ts'

export interface Spot {
  x: number
  y: number
}

export interface Layout {
  height: number
  views: Record<string, Spot>[]
  /** Height of the label beside each view's axle. */
  labels: number[]
  /** Left edge of what is drawn: axle labels end before it. */
  left: number
}

const ROOM = 16
const LINE = 20

/** Fit every view into one drawing of this width, at one scale; `beside` px at the left stay free for labels. */
export function layout(views: LinkageView[], width: number, beside: number): Layout {
  const all = views.flatMap((view) => Object.values(view.points))
  const [xs, zs] = [all.map((p) => p[0]), all.map((p) => p[1])]
  const [back, low, top] = [Math.min(...xs), Math.min(...zs), Math.max(...zs)]
  const scale = (width - beside - 2 * ROOM) / (Math.max(...xs) - back)
  const at = ([x, z]: [number, number]): Spot => ({ x: beside + ROOM + (x - back) * scale, y: ROOM + (top - z) * scale })
  const placed = views.map((view) => Object.fromEntries(Object.entries(view.points).map(([name, point]) => [name, at(point)])))
  return {
    height: ROOM + (top - low) * scale + ROOM + 2 * LINE,
    views: placed,
    labels: apart(placed.map((points) => points['axle']!.y)),
    left: beside,
  }
}

/** Heights as near as can be to those wished for, a line of text apart. */
export function apart(wished: number[]): number[] {
  const order = wished.map((_, index) => index).sort((a, b) => wished[a]! - wished[b]!)
  const placed = [...wished]
  for (let round = 0; round < wished.length; round++) {
    for (let k = 1; k < order.length; k++) {
      const [above, below] = [order[k - 1]!, order[k]!]
      const missing = LINE - (placed[below]! - placed[above]!)
      if (missing > 0) {
        placed[above]! -= missing / 2
        placed[below]! += missing / 2
      }
    }
  }
  return placed
}

/** The middle of some spots. */
export function middle(...spots: Spot[]): Spot {
  const mean = (values: number[]) => values.reduce((sum, value) => sum + value, 0) / values.length
  return { x: mean(spots.map((spot) => spot.x)), y: mean(spots.map((spot) => spot.y)) }
}
