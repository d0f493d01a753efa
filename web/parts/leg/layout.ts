/** Where a leg's parts lie in a drawing, in px: lengths to scale, widths doubled so that coils can be told from gas. */
import type { DrawnLeg, LegPart, Section } from '../../core/report.ts'
import { between } from '../chart/geometry.ts'

const PX_PER_MM = { phone: 0.44, desk: 0.56 } as const
/** The leg that those scales are for, cap to lug; another is drawn as tall, but not larger than this. */
const TALL = 968
const LARGEST = 0.9
const LYING_ROOM = 8
/** Px beside the leg for the gap's dimension, and between leg and what stands beside it. */
const DIMENSION = 30
const APART = 14

/** The parts that can be tapped, and what their fields are about. */
export type PartName = 'cap' | 'gap' | 'springs' | 'oil' | 'leg' | 'cartridge' | 'air spring'

export interface Place {
  scale: number
  /** Px of the rim, and of the middle of the leg. */
  rim: number
  centre: number
  /** Px to the left of the middle that the gap's dimension stands at, and the right edge of the leg's column. */
  dimension: number
  right: number
  y: (mm: number) => number
  /** Half a diameter in px, doubled as every width. */
  half: (diameter: number) => number
}

const named = (leg: DrawnLeg, name: string): LegPart | undefined => leg.parts.find((part) => part.name === name)

/** From the cap's top to the lug's foot, hanging. */
export function tall({ parts }: DrawnLeg): { over: number; lug: number; foot: number } {
  const lug = parts.find((part) => part.name === 'axle lug')!
  const over = -Math.min(...parts.map((part) => part.top))
  return { over, lug: lug.top, foot: lug.bottom }
}

export function scaleOf(leg: DrawnLeg, desk: boolean): number {
  const { over, foot } = tall(leg)
  return Math.min((PX_PER_MM[desk ? 'desk' : 'phone'] * TALL) / (over + foot), LARGEST)
}

/** A leg upright, its rim some px down. */
export function upright(leg: DrawnLeg, desk: boolean, rim: number): Place {
  return placed(leg, scaleOf(leg, desk), rim)
}

/** A leg that fills a width, lying; to be drawn in a group that is turned by a right angle. */
export function lying(leg: DrawnLeg, width: number): Place {
  const { over, foot } = tall(leg)
  const scale = (width - 2 * LYING_ROOM) / (over + foot)
  return placed(leg, scale, over * scale)
}

function placed(leg: DrawnLeg, scale: number, rim: number): Place {
  const half = (diameter: number) => diameter * scale
  const widest = Math.max(...leg.parts.map((part) => half(part.outside))) + 3
  const centre = DIMENSION + widest
  return { scale, rim, centre, dimension: centre - widest - 10, right: centre + widest + APART, y: (mm) => rim + mm * scale, half }
}

/** Px of the cap's top over the rim. */
export const overRim = (leg: DrawnLeg, desk: boolean): number => tall(leg).over * scaleOf(leg, desk)

/** Top and bottom of a part at a stroke, mm under the rim. */
export function at(part: LegPart, stroke: number): { top: number; bottom: number } {
  const up = part.moves ? stroke : 0
  return { top: part.top - up, bottom: part.bottom - up }
}

/** A list along the stroke read at one. */
export const read = (section: Section, values: number[], stroke: number): number => between(section.stroke, values, stroke)

export const level = (section: Section, leg: DrawnLeg, stroke: number): number => read(section, leg.spaces[0]!.bottom, stroke)

/** The front halves of a spring's coils: from left to right, one wire each. */
export function coilPath(top: number, bottom: number, centre: number, half: number, coils: number): string {
  const turns = Math.max(2, Math.round(coils))
  const pitch = (bottom - top) / turns
  const lines = Array.from({ length: turns }, (_, i) => {
    const y = top + (i + 0.5) * pitch
    return `M${round(centre - half)} ${round(y + pitch * 0.25)}L${round(centre + half)} ${round(y - pitch * 0.25)}`
  })
  return lines.join('')
}

const round = (px: number): number => Math.round(px * 100) / 100

/** The part at a place: mm under the rim, and mm from the middle. */
export function partAt(section: Section, leg: DrawnLeg, stroke: number, depth: number, off: number): PartName {
  const lies = (name: string) => {
    const part = named(leg, name)
    return part !== undefined && depth >= at(part, stroke).top && depth <= at(part, stroke).bottom && Math.abs(off) <= part.outside / 2
  }
  if (depth <= named(leg, 'cap')!.bottom) return 'cap'
  const wide = (named(leg, 'inner tube')?.outside ?? 40) / 2
  if (off < -wide - 4 && depth <= leg.gap) return 'gap'
  if (lies('axle lug')) return 'leg'
  const spring = leg.springs.find((one) => depth >= read(section, one.top, stroke) && depth <= read(section, one.bottom, stroke))
  if (spring && Math.abs(off) <= (spring.mean + spring.wire) / 2) return 'springs'
  if (lies('air cylinder') || lies('air piston')) return 'air spring'
  if (lies('cartridge') || lies('opened cartridge')) return 'cartridge'
  return Math.abs(off) < wide - 2 ? 'oil' : 'leg'
}
