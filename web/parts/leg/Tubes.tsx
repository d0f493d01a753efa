import type { DrawnLeg, LegPart, Section } from '../../core/report.ts'
import { at, coilPath, level, type Place, read } from './layout.ts'

export interface Drawn {
  section: Section
  leg: DrawnLeg
  stroke: number
  place: Place
  /** The pattern of the gas, the same as in the chart. */
  dots: string
}

const DASHED = (part: { assumed: string[] }, what = 'length') => (part.assumed.includes(what) ? 'assumed' : '')

/** The leg in section: gas and oil, then what stands in them, then the tubes. */
export function LegSection(drawn: Drawn) {
  const part = (name: string) => drawn.leg.parts.find((one) => one.name === name)
  const cylinder = part('air cylinder')
  return (
    <g class="section">
      <Open {...drawn} />
      {(['spacer', 'cartridge', 'opened cartridge'] as const).map((name) => part(name) && <Body key={name} {...drawn} part={part(name)!} />)}
      {cylinder && <Body {...drawn} part={cylinder} />}
      {drawn.leg.spaces.slice(1).map((space) => (
        <Closed key={space.name} {...drawn} name={space.name} />
      ))}
      {(['rod', 'piston', 'air piston'] as const).map((name) => part(name) && <Solid key={name} {...drawn} part={part(name)!} />)}
      <Coils {...drawn} />
      <Walls {...drawn} part={part('inner tube')!} />
      <Walls {...drawn} part={part('outer tube')!} />
      <Seal {...drawn} />
      <Ends {...drawn} />
    </g>
  )
}

interface Box {
  x: number
  y: number
  width: number
  height: number
}

function box({ place }: Drawn, diameter: number, top: number, bottom: number): Box {
  const half = place.half(diameter)
  return { x: place.centre - half, y: place.y(top), width: 2 * half, height: Math.max(place.y(bottom) - place.y(top), 0) }
}

/** The open space of both tubes, gas over the level and oil under it. */
function Open(drawn: Drawn) {
  const { section, leg, stroke, place, dots } = drawn
  const oil = level(section, leg, stroke)
  const [outer, inner, cap] = ['outer tube', 'inner tube', 'cap'].map((name) => leg.parts.find((part) => part.name === name)!)
  const low = at(inner!.moves ? inner! : outer!, stroke).bottom
  // The tube that is held by the clamps, and the one that slides: both filled, the one with the level last.
  const wide = at(outer!, stroke)
  const narrow = at(inner!, stroke)
  const top = at(cap!, stroke).bottom
  const spaces = inner!.moves ? [{ d: inner!.inside, ...narrow }, { d: outer!.inside, ...wide }] : [{ d: outer!.inside, ...wide, full: true }, { d: inner!.inside, ...narrow }]
  return (
    <g>
      {spaces.map(({ d, top: from, bottom: to, ...how }) => {
        const start = Math.max(from, top)
        const end = Math.min(to, low)
        const split = 'full' in how ? start : Math.min(Math.max(oil, start), end)
        return (
          <g key={d}>
            <rect class="ground" {...box(drawn, d, start, split)} />
            <rect fill={dots} {...box(drawn, d, start, split)} data-gas />
            <rect class="oil" {...box(drawn, d, split, end)} />
          </g>
        )
      })}
      <path class="level" data-level={oil} d={`M${place.centre - place.half(widthAt(leg, stroke, oil))} ${place.y(oil)}h${2 * place.half(widthAt(leg, stroke, oil))}`} />
    </g>
  )
}

function widthAt(leg: DrawnLeg, stroke: number, depth: number): number {
  const [outer, inner] = ['outer tube', 'inner tube'].map((name) => leg.parts.find((part) => part.name === name)!)
  const { top } = at(inner!, stroke)
  return inner!.moves && depth < top ? outer!.inside : inner!.inside
}

/** A body with oil in it; an opened one shows what stands around it. */
function Body({ part, ...drawn }: Drawn & { part: LegPart }) {
  const { top, bottom } = at(part, drawn.stroke)
  const open = part.name === 'opened cartridge' || part.name === 'spacer'
  return <rect class={`body ${open ? '' : part.name === 'air cylinder' ? 'ground' : 'oil'} ${DASHED(part)}`} {...box(drawn, part.outside, top, bottom)} data-part={part.name} />
}

/** A closed gas space; a spring-loaded piston has none, and is a plate. */
function Closed({ name, ...drawn }: Drawn & { name: string }) {
  const { section, leg, stroke, place, dots } = drawn
  const space = leg.spaces.find((one) => one.name === name)!
  const body = leg.parts.find((part) => part.name === 'air cylinder') ?? leg.parts.find((part) => part.name === 'cartridge')
  if (!body) return null
  const [top, bottom] = [read(section, space.top, stroke), read(section, space.bottom, stroke)]
  const half = place.half(body.inside)
  if (!space.volume) {
    const start = at(body, stroke).top
    return (
      <g data-space={name}>
        <rect class="ground" {...box(drawn, body.inside, start, top)} />
        <path class="coil thin" stroke-width={1.4} d={coilPath(place.y(start), place.y(top), place.centre, half * 0.7, 4)} />
        <path class="plate" d={`M${place.centre - half} ${place.y(top)}h${2 * half}`} />
      </g>
    )
  }
  return (
    <g data-space={name}>
      <rect class="ground" {...box(drawn, body.inside, top, bottom)} />
      <rect class="body" fill={dots} {...box(drawn, body.inside, top, bottom)} />
    </g>
  )
}

function Solid({ part, ...drawn }: Drawn & { part: LegPart }) {
  const { top, bottom } = at(part, drawn.stroke)
  return <rect class={`${part.name === 'rod' ? 'rod' : 'plate-fill'} ${part.name === 'rod' ? DASHED(part, 'width') : ''}`} {...box(drawn, part.outside, top, bottom)} data-part={part.name} />
}

function Coils(drawn: Drawn) {
  const { section, leg, stroke, place } = drawn
  return (
    <>
      {leg.springs.map((spring) => {
        const [top, bottom] = [place.y(read(section, spring.top, stroke)), place.y(read(section, spring.bottom, stroke))]
        const half = place.half(spring.mean + spring.wire) - 0.5
        return (
          <g key={spring.name} data-spring={spring.name}>
            <path class="coil" stroke-width={Math.max(1.2, spring.wire * place.scale)} d={coilPath(top, bottom, place.centre, half, spring.coils)} />
            <path class="plate" d={`M${place.centre - half} ${top}h${2 * half}M${place.centre - half} ${bottom}h${2 * half}`} />
          </g>
        )
      })}
    </>
  )
}

/** Cut metal; dashed from where a tube's length is not known any more. */
function Walls({ part, ...drawn }: Drawn & { part: LegPart }) {
  const { place, section, stroke } = drawn
  const { top, bottom } = at(part, stroke)
  const width = Math.max(place.half(part.outside) - place.half(part.inside), 1.2)
  const known = part.assumed.includes('length') ? Math.min(top + section.travel, bottom) : bottom
  const off = place.half(part.inside) + width / 2
  const line = (from: number, to: number) => [-off, off].map((x) => `M${place.centre + x} ${place.y(from)}V${place.y(to)}`).join('')
  return (
    <g data-part={part.name} class="wall" stroke-width={width}>
      <path d={line(top, known)} />
      {known < bottom && <path class="assumed" d={line(known, bottom)} />}
    </g>
  )
}

/** Where one tube enters the other. */
function Seal(drawn: Drawn) {
  const { leg, stroke, place } = drawn
  const outer = leg.parts.find((part) => part.name === 'outer tube')!
  const { top, bottom } = at(outer, stroke)
  const y = outer.moves ? place.y(top) : place.y(bottom)
  const half = place.half(outer.outside) + 2
  const inner = place.half(leg.parts.find((part) => part.name === 'inner tube')!.outside)
  return <path class="plate-fill" d={[-1, 1].map((side) => `M${place.centre + side * inner} ${y - 4}H${place.centre + side * half}V${y + 5}H${place.centre + side * inner}Z`).join('')} />
}

/** Cap and axle lug. */
function Ends(drawn: Drawn) {
  const { leg, stroke, place } = drawn
  const [cap, lug, outer] = ['cap', 'axle lug', 'outer tube'].map((name) => leg.parts.find((part) => part.name === name)!)
  const foot = at(lug!, stroke)
  const rimWidth = place.half(Math.max(outer!.outside, cap!.outside)) + 3
  const height = place.y(0) - place.y(cap!.top)
  return (
    <g class="ends">
      <rect x={place.centre - rimWidth * 0.36} y={place.rim - height} width={rimWidth * 0.72} height={height * 0.5} />
      <rect x={place.centre - rimWidth} y={place.rim - height * 0.5} width={2 * rimWidth} height={height * 0.5} data-part="cap" />
      <rect class="ground" {...box(drawn, cap!.outside, 0, cap!.bottom)} />
      <rect {...box(drawn, lug!.outside, foot.top, foot.bottom)} rx={4} data-part="axle lug" />
      <circle cx={place.centre} cy={place.y((foot.top + foot.bottom) / 2)} r={7} />
    </g>
  )
}

/** The gap on the tube that the clamps hold, as it is read: rim to level, leg collapsed. */
export function GapDimension({ leg, place }: Pick<Drawn, 'leg' | 'place'>) {
  const { dimension: x, rim } = place
  const low = place.y(leg.gap)
  const [outer] = leg.parts.filter((part) => part.name === 'outer tube')
  const half = place.half(outer!.outside)
  const text = String(Math.round(leg.gap))
  return (
    <g class="gap-dimension" data-gap-shown={text}>
      <path d={`M${x - 4} ${rim}H${place.centre - half}M${x - 4} ${low}H${place.centre - half}`} />
      <path class="gap-level" d={`M${place.centre - half} ${low}H${place.centre + half}`} />
      <path d={`M${x} ${rim}V${low}M${x - 4} ${rim + 7}L${x} ${rim}L${x + 4} ${rim + 7}M${x - 4} ${low - 7}L${x} ${low}L${x + 4} ${low - 7}`} />
      <text class="cased" transform={`translate(${x - 5},${(rim + low) / 2}) rotate(-90)`} text-anchor="middle">
        {text}
      </text>
    </g>
  )
}
