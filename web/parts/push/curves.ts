/** Where the lines and points of a bench push lie: whole forces, or against the likeliest explanation. */
import { max, min } from 'd3-array'
import type { PushReport, PushRival } from '../../core/report.ts'
import { between, type Frame, type Geometry, straight } from '../chart/geometry.ts'

export interface Line {
  /** Explanations that lie on each other share a line. */
  rivals: PushRival[]
  at: [stroke: number, force: number][]
}

export interface Spot {
  stroke: number
  force: number
  half: number
}

export interface Lines {
  lines: Line[]
  spots: Spot[]
}

const BEFORE = 30 // mm shown before the first point
const ALIKE = 0.5 // N

/** The curves from a little before the first point on, and the points; less the likeliest's force where differences are asked for. */
export function linesOf(push: PushReport, whole: boolean): Lines {
  const from = Math.max(push.strokes[0]!, push.points[0]!.stroke.value - BEFORE)
  const [best] = push.rivals
  const base = (stroke: number) => (whole ? 0 : between(push.strokes.slice(0, best!.curve.length), best!.curve, stroke))
  const lines: Line[] = []
  for (const rival of push.rivals) {
    const at = rival.curve.flatMap((force, i): Line['at'] => (push.strokes[i]! >= from && push.strokes[i]! <= reach(push) ? [[push.strokes[i]!, force - base(push.strokes[i]!)]] : []))
    const same = lines.find((line) => line.at.length === at.length && line.at.every(([, force], i) => Math.abs(force - at[i]![1]) < ALIKE))
    if (same) same.rivals.push(rival)
    else if (at.length > 1) lines.push({ rivals: [rival], at })
  }
  const spots = push.points.map(({ stroke, force }) => ({ stroke: stroke.value, force: force.value - base(stroke.value), half: force.plus_minus_95 ?? 0 }))
  return { lines, spots }
}

/** The last stroke that the likeliest explanation knows: beyond, there is nothing to differ from. */
const reach = (push: PushReport): number => push.strokes[push.rivals[0]!.curve.length - 1]!

/** Scales that hold all of them, stroke along the bottom. */
export function placed({ lines, spots }: Lines, frame: Frame): Geometry {
  const forces = [...lines.flatMap(({ at }) => at.map(([, force]) => force)), ...spots.flatMap(({ force, half }) => [force - half, force + half])]
  const strokes = [...lines.flatMap(({ at }) => at.map(([stroke]) => stroke)), ...spots.map(({ stroke }) => stroke)]
  const [low, high] = [min([0, ...forces])!, max([0, ...forces])!]
  const edge = 0.04 * (high - low)
  const stroke = straight([min(strokes)!, max(strokes)!], [frame.left, frame.right])
  const force = straight([low < 0 ? low - edge : low, high + edge], [frame.bottom, frame.top])
  return { frame, turned: true, travel: max(strokes)!, stroke, force, at: (mm, newton) => [stroke(mm), force(newton)], strokeScale: stroke, forceScale: force }
}
