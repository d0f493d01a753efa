/** What a leg does at a stroke, in words: beside the drawing, and for those who hear it. */
import type { DrawnLeg, LegEvent, Section } from '../../core/report.ts'
import { numberText } from '../figure/text.ts'
import { level, read } from './layout.ts'

const NEAR = 2.5

export interface Line {
  key: string
  text: string
  /** For a narrow screen. */
  brief: string
}

/** Where the oil stands, and every gas with its pressure. */
export function linesAt(section: Section, leg: DrawnLeg, stroke: number): Line[] {
  const oil = `oil ${numberText(level(section, leg, stroke), 0)} mm`
  return [
    { key: 'oil', text: `${oil} under the rim`, brief: `${oil} deep` },
    ...leg.spaces.map((space, i) => {
      const name = i === 0 ? 'gas' : space.name
      const much = space.volume ? `${numberText(read(section, space.volume, stroke), 0)} ml, ` : ''
      const bar = read(section, space.pressure, stroke)
      return { key: space.name, text: `${name} ${much}${pressureWords(bar)}`, brief: `${name} ${much}${numberText(bar, 1)} bar` }
    }),
  ]
}

function pressureWords(bar: number): string {
  const text = numberText(Math.abs(bar), 1)
  if (text === '0.0') return 'at outside pressure'
  return `${text} bar ${bar > 0 ? 'over' : 'under'} outside`
}

/** What happens at a stroke: what is at hand, else what must not happen, else how far off the last stop is. */
export function eventAt({ events }: Section, stroke: number): LegEvent | undefined {
  const near = events.filter((event) => Math.abs(event.stroke - stroke) <= NEAR)
  return near.find((event) => event.bad) ?? near[0] ?? events.find((event) => event.bad) ?? events.at(-1)
}

/** Said by the slider. */
export function spoken(section: Section, leg: DrawnLeg, stroke: number, force: number | null): string {
  const near = section.events.filter((event) => Math.abs(event.stroke - stroke) <= NEAR).map((event) => event.words)
  const wheel = force === null ? [] : [`${numberText(force, 1)} kN at the wheel`]
  return [`${numberText(stroke, 0)} mm of stroke`, ...wheel, ...linesAt(section, leg, stroke).map((line) => line.text), ...near].join('; ')
}

const KINDS: Record<string, string> = {
  open: 'a fork leg with one air space over its oil',
  'opened cartridge': 'a fork leg whose cartridge is opened into it',
  'sealed cartridge': 'a fork leg with a sealed cartridge hung from its cap',
  'air leg': 'a fork leg with an air spring',
}

/** The drawing for those who hear it: what stands from top to bottom, and the stops. */
export function legDescription(section: Section, leg: DrawnLeg): string {
  const upside = section.layout === 'upside-down'
  const tubes = upside ? 'the outer tube above, held by the clamps; the inner tube slides into it with the axle' : 'the inner tube above, held by the clamps; the outer tube slides over it with the axle'
  const inside = leg.parts.filter((part) => !['outer tube', 'inner tube', 'axle lug', 'cap'].includes(part.name)).map((part) => part.name)
  return [
    `Section of ${KINDS[section.kind] ?? 'a fork leg'}: ${tubes}.`,
    `In it from the top: cap, ${[...leg.springs.map((spring) => spring.name), ...inside].join(', ')}.`,
    `Gap ${numberText(leg.gap, 0)} mm, ${section.gap_words}.`,
    ...section.events.map((event) => event.words),
    'Figures along the stroke stand in the table.',
  ].join(' ')
}

/** What is drawn without a reading to tell it. */
export function assumedWords(leg: DrawnLeg): string {
  const said = [...leg.parts, ...leg.springs].filter((part) => part.assumed.length > 0).map((part) => `${part.name} (${part.assumed.join(', ')})`)
  return said.length > 0 ? `Not measured, drawn as assumed: ${said.join('; ')}. No figure rests on these.` : ''
}
