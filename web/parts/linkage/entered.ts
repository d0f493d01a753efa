/** The linkage as far as its points are entered: drawn from the first one on, before the core can close the loop. */
import type { FieldPath } from '../../generated/schema.ts'
import type { Spot } from './layout.ts'

export type Coordinates = [forward: number, up: number]

export interface EnteredPoint {
  /** The point's part in its two fields' paths. */
  key: string
  name: string
  /** Null while one of both is not entered. */
  at: Coordinates | null
}

/** Keys in the order in which they are asked for, with the core's names. */
const DIRECT = [
  ['axle', 'axle'],
  ['shock_top', 'shock top'],
  ['shock_foot', 'shock foot'],
] as const
const ROCKER = [
  ['axle', 'axle'],
  ['shock_top', 'shock top'],
  ['rocker', 'rocker pivot'],
  ['rocker_rod', 'rod on rocker'],
  ['rocker_shock', 'shock on rocker'],
  ['rod', "rod's other end"],
] as const
const PIVOT = 'swingarm pivot'
const BARS: [string, string][] = [
  [PIVOT, 'axle'],
  [PIVOT, 'shock foot'],
  ['shock top', 'shock foot'],
  ['shock top', 'shock on rocker'],
  ['rocker pivot', 'shock on rocker'],
  ['rocker pivot', 'rod on rocker'],
  ['rod on rocker', "rod's other end"],
]

export const pathsOf = (key: string): [FieldPath, FieldPath] => [`rear.${key}_x` as FieldPath, `rear.${key}_z` as FieldPath]

/** What is entered of a linkage; `read` gives a coordinate in mm, or null. */
export function enteredPoints(rocker: boolean, read: (path: FieldPath) => number | null): EnteredPoint[] {
  return (rocker ? ROCKER : DIRECT).map(([key, name]) => {
    const [x, z] = pathsOf(key).map(read)
    return { key, name, at: x == null || z == null ? null : [x, z] }
  })
}

/** The point whose field this is; null for any other field. */
export const pointOf = (path: string): string | null => /^rear\.(axle|shock_top|shock_foot|rocker|rocker_rod|rocker_shock|rod)_[xz]$/.exec(path)?.[1] ?? null

/** The core's name of a point by its key in the fields. */
export const nameOf = (key: string): string | undefined => [...DIRECT, ...ROCKER].find(([one]) => one === key)?.[1]

/** Lines between points that are both known; the rocker or the rod hangs on the swingarm. */
export function barsOf(points: EnteredPoint[], rockerOnSwingarm: boolean): [string, string][] {
  const known = new Set([PIVOT, ...points.filter((point) => point.at).map((point) => point.name)])
  const held: [string, string] = [PIVOT, rockerOnSwingarm ? 'rocker pivot' : "rod's other end"]
  return [...BARS, held].filter((bar) => bar.every((end) => known.has(end)))
}

const ROOM = 20
/** What a side view usually reaches over, mm from the pivot: the picture does not jump as points come. */
const USUAL: Coordinates[] = [
  [-600, -160],
  [60, 340],
]

/** Every known point, and the pivot, in a box of px at one scale. */
export function fit(points: EnteredPoint[], width: number, height: number): Record<string, Spot> {
  const known: [string, Coordinates][] = [[PIVOT, [0, 0]], ...points.flatMap(({ name, at }): [string, Coordinates][] => (at ? [[name, at]] : []))]
  const all = [...USUAL, ...known.map(([, at]) => at)]
  const [xs, zs] = [all.map((at) => at[0]), all.map((at) => at[1])]
  const [back, front, low, top] = [Math.min(...xs), Math.max(...xs), Math.min(...zs), Math.max(...zs)]
  const scale = Math.min((width - 2 * ROOM) / (front - back), (height - 2 * ROOM) / (top - low))
  const left = (width - (front - back) * scale) / 2
  return Object.fromEntries(known.map(([name, [x, z]]) => [name, { x: left + (x - back) * scale, y: ROOM + (top - z) * scale }]))
}
