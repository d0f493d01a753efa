/** Another state of the same leg laid over the one drawn: what differs in it, dashed. */
import type { DrawnLeg, LegSpace, Section, StateLooked } from '../../core/report.ts'
import { numberText } from '../figure/text.ts'
import { level, type Place, read } from './layout.ts'
import type { Line } from './words.ts'

interface Laid {
  section: Section
  leg: DrawnLeg
  stroke: number
  place: Place
}

/** Mm by which a thing must stand apart to be drawn twice. */
const APART = 0.5

/** Its oil's level, its gap, where its springs end and what its cartridge holds; what stands where the other's does is not drawn twice. */
export function LaidOver({ over, own, stroke, place }: { over: StateLooked | undefined; own: Omit<Laid, 'place' | 'stroke'>; stroke: number; place: Place }) {
  const section = over?.section
  const leg = section?.legs[0]
  if (!section || !leg) return null
  const laid = { section, leg, stroke: Math.min(stroke, section.stroke.at(-1)!), place }
  const paths = [...levelPath(laid), ...springPaths(laid, own), ...leg.spaces.slice(1).map((space) => spacePath(laid, space)), ...gapPath(laid, own.leg)]
  return (
    <g class="laid-over" data-over={over.state}>
      {paths.map((d, i) => (
        <g key={i}>
          <path class="casing" d={d} />
          <path d={d} />
        </g>
      ))}
    </g>
  )
}

/** The line that says where its oil stands. */
export function overLine(over: StateLooked | undefined, stroke: number): Line[] {
  const section = over?.section
  const leg = section?.legs[0]
  if (!section || !leg) return []
  const oil = `oil ${numberText(level(section, leg, stroke), 0)} mm`
  return [{ key: 'over', text: `- - ${over.label}: ${oil}`, brief: `- - ${oil}` }]
}

const across = ({ place }: Laid, depth: number, half: number): string => `M${place.centre - half} ${place.y(depth)}h${2 * half}`

function levelPath(laid: Laid): string[] {
  const outer = laid.leg.parts.find((part) => part.name === 'outer tube')!
  return [across(laid, level(laid.section, laid.leg, laid.stroke), laid.place.half(outer.outside))]
}

function springPaths(laid: Laid, own: Omit<Laid, 'place' | 'stroke'>): string[] {
  const { section, leg, stroke, place } = laid
  return leg.springs.flatMap((spring, i) =>
    (['top', 'bottom'] as const).flatMap((end) => {
      const [here, there] = [read(section, spring[end], stroke), own.leg.springs[i] && read(own.section, own.leg.springs[i]![end], stroke)]
      return there !== undefined && Math.abs(here - there) < APART ? [] : [across(laid, here, place.half(spring.mean + spring.wire))]
    }),
  )
}

/** A gas space closed all round; oil under a piston has none, and is the piston's own line. */
function spacePath(laid: Laid, space: LegSpace): string {
  const { section, leg, stroke, place } = laid
  const body = leg.parts.find((part) => part.name === 'cartridge')
  const half = place.half(body?.inside ?? 0)
  const [top, bottom] = [read(section, space.top, stroke), read(section, space.bottom, stroke)]
  if (!space.volume) return across(laid, top, half)
  return `M${place.centre - half} ${place.y(top)}h${2 * half}V${place.y(bottom)}h${-2 * half}Z`
}

/** Where its oil stands as the gap is read, outside the tube. */
function gapPath(laid: Laid, own: DrawnLeg): string[] {
  if (Math.abs(laid.leg.gap - own.gap) < APART) return []
  const outer = laid.leg.parts.find((part) => part.name === 'outer tube')!
  return [`M${laid.place.dimension - 4} ${laid.place.y(laid.leg.gap)}H${laid.place.centre - laid.place.half(outer.outside)}`]
}
