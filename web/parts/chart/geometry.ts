/** Where the force chart's curves lie: stroke running up and force to the right, or turned. */
import { bisectRight, max, min, ticks } from 'd3-array'
import type { Curve } from '../../core/report.ts'

export interface Frame {
  left: number
  right: number
  top: number
  bottom: number
  /** Beside the leg room is short: labels start here, and share a row where they can. */
  start?: number
}

export type Series = 'springs' | 'slow' | 'working' | 'fast'

export interface Geometry {
  frame: Frame
  turned: boolean
  travel: number
  stroke: (mm: number) => number
  force: (kilonewton: number) => number
  at: (mm: number, kilonewton: number) => [number, number]
  strokeScale: Scale
  forceScale: Scale
}

/** A straight line from figures to px. The library's scales are twenty kinds in one, and larger than the chart. */
export interface Scale {
  (value: number): number
  invert: (px: number) => number
  domain: readonly [number, number]
  ticks: (about: number) => number[]
}

export function straight(domain: [number, number], [from, to]: [number, number]): Scale {
  const [low, high] = domain
  const slope = (to - from) / (high - low)
  return Object.assign((value: number) => from + (value - low) * slope, {
    invert: (px: number) => low + (px - from) / slope,
    domain,
    ticks: (about: number) => ticks(low, high, about),
  })
}

/** How far a bump rubber, which no figure holds, may stretch the scale: then its line leaves the plot. */
const RUBBER_ROOM = 1.25

/** Scales that hold every curve shown and a force that is wanted, so that setups lie over each other at one scale. */
export function geometry(curves: Curve[], frame: Frame, turned: boolean, wanted = 0): Geometry {
  const travel = max(curves, (curve) => curve.stroke.at(-1))!
  const bare = max([wanted, ...curves.flatMap((curve) => [...curve.fast, ...curve.working])])!
  const most = max([bare, ...curves.flatMap((curve) => curve.rubber ?? []).map((force) => Math.min(force, bare * RUBBER_ROOM))])!
  // An air spring may pull the wheel in near full extension.
  const least = min([0, ...curves.flatMap((curve) => [...curve.slow, ...curve.working])])!
  const [across, up]: [number, number][] = [[frame.left, frame.right], [frame.bottom, frame.top]]
  const strokeScale = straight([0, travel], turned ? across! : up!)
  const forceScale = straight([least, most * 1.04], turned ? up! : across!)
  const at = (mm: number, kilonewton: number): [number, number] =>
    turned ? [strokeScale(mm), forceScale(kilonewton)] : [forceScale(kilonewton), strokeScale(mm)]
  return { frame, turned, travel, stroke: strokeScale, force: forceScale, at, strokeScale, forceScale }
}

/** A value between points that lie close enough for straight lines; at the ends, theirs. */
export function between(at: number[], values: number[], wanted: number): number {
  const i = Math.min(Math.max(bisectRight(at, wanted), 1), at.length - 1)
  const share = (wanted - at[i - 1]!) / (at[i]! - at[i - 1]! || 1)
  return values[i - 1]! + Math.min(Math.max(share, 0), 1) * (values[i]! - values[i - 1]!)
}

/** A force between the curve's points. */
export const reader = (curve: Curve, series: Series | 'wheel_rate') => (mm: number): number => between(curve.stroke, curve[series], mm)

/** Through the points by straight lines, to hundredths of a px. */
export const joined = (points: [number, number][]): string => `M${points.map(([x, y]) => `${round(x)},${round(y)}`).join('L')}`

const round = (px: number): number => Math.round(px * 100) / 100

const path = (place: Geometry, strokes: number[], forces: number[]): string => joined(strokes.map((mm, i) => place.at(mm, forces[i]!)))

export const curvePath = (place: Geometry, curve: Curve, series: Series): string => path(place, curve.stroke, curve[series])

/** Where the bump rubber works: from its first touch on; null where there is none. */
export function rubberPath(place: Geometry, { stroke, working, rubber }: Curve): string | null {
  const touched = rubber ? rubber.findIndex((force, i) => force > working[i]! + 1e-6) : -1
  if (!rubber || touched < 0) return null
  const from = Math.max(touched - 1, 0)
  const most = place.forceScale.domain[1]
  const out = rubber.findIndex((force) => force > most)
  if (out < 0) return path(place, stroke.slice(from), rubber.slice(from))
  const leaves = between(rubber.slice(out - 1, out + 1), stroke.slice(out - 1, out + 1), most)
  return path(place, [...stroke.slice(from, out), leaves], [...rubber.slice(from, out), most])
}

/** The field between two curves; from the axis where `low` is null. */
export function fieldPath(place: Geometry, curve: Curve, low: Series | null, high: Series): string {
  const edge = (series: Series | null) => curve.stroke.map((mm, i) => place.at(mm, series ? curve[series][i]! : 0))
  return `${joined([...edge(high), ...edge(low).reverse()])}Z`
}

/** Whether the gas is told apart slow and fast: a shock's is not. */
export const hasBand = (curve: Curve): boolean => curve.fast.at(-1)! - curve.slow.at(-1)! > 0.005 * curve.fast.at(-1)!
