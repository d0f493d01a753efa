/** Where the force chart's curves lie: stroke running up and force to the right, or turned. */
import { max } from 'd3-array'
import { scaleLinear } from 'd3-scale'
import { area, curveLinear, line } from 'd3-shape'
import type { Curve } from '../../core/report.ts'

export interface Frame {
  left: number
  right: number
  top: number
  bottom: number
}

export type Series = 'springs' | 'slow' | 'working' | 'fast'

export interface Geometry {
  frame: Frame
  turned: boolean
  travel: number
  stroke: (mm: number) => number
  force: (kilonewton: number) => number
  at: (mm: number, kilonewton: number) => [number, number]
  strokeScale: ReturnType<typeof scaleLinear<number, number>>
  forceScale: ReturnType<typeof scaleLinear<number, number>>
}

/** Scales that hold every curve shown, so that setups lie over each other at one scale. */
export function geometry(curves: Curve[], frame: Frame, turned: boolean): Geometry {
  const travel = max(curves, (curve) => curve.stroke.at(-1))!
  const most = max(curves, (curve) => max([...curve.fast, ...curve.working]))!
  const [across, up]: [number, number][] = [[frame.left, frame.right], [frame.bottom, frame.top]]
  const strokeScale = scaleLinear([0, travel], turned ? across! : up!)
  const forceScale = scaleLinear([0, most * 1.04], turned ? up! : across!)
  const at = (mm: number, kilonewton: number): [number, number] =>
    turned ? [strokeScale(mm), forceScale(kilonewton)] : [forceScale(kilonewton), strokeScale(mm)]
  return { frame, turned, travel, stroke: strokeScale, force: forceScale, at, strokeScale, forceScale }
}

/** A force between the curve's points, which lie close enough for straight lines. */
export function reader(curve: Curve, series: Series | 'wheel_rate'): (mm: number) => number {
  return scaleLinear(curve.stroke, curve[series]).clamp(true)
}

export function curvePath(place: Geometry, curve: Curve, series: Series): string {
  return line<number>(
    (_, i) => place.at(curve.stroke[i]!, curve[series][i]!)[0],
    (_, i) => place.at(curve.stroke[i]!, curve[series][i]!)[1],
  ).curve(curveLinear)(curve.stroke)!
}

/** The field between two curves; from the axis where `low` is null. */
export function fieldPath(place: Geometry, curve: Curve, low: Series | null, high: Series): string {
  const point = (series: Series | null, i: number) => place.at(curve.stroke[i]!, series ? curve[series][i]! : 0)
  return area<number>()
    .x0((_, i) => point(low, i)[0])
    .y0((_, i) => point(low, i)[1])
    .x1((_, i) => point(high, i)[0])
    .y1((_, i) => point(high, i)[1])(curve.stroke)!
}

/** Whether the gas is told apart slow and fast: a shock's is not. */
export const hasBand = (curve: Curve): boolean => curve.fast.at(-1)! - curve.slow.at(-1)! > 0.005 * curve.fast.at(-1)!
