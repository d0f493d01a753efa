/** The answer as a column of lines: words on the left, figures under each other. Its numbers are the report's own. */
import type { Candidate, EndOk, Quantity, Setup } from '../../core/report.ts'
import { bare, number, type Shown, size } from '../figure/text.ts'

export interface Line {
  words: string
  figures: { of: Shown; unit: string; to?: string }[]
  /** What stands where there is no figure to show. */
  plain?: string
}

/** The lines of an end's answer. */
export function answerLines(end: EndOk): Line[] {
  const { chosen, leave, sure } = end
  if (chosen.pressure) return airLines(end)
  const open = sure !== null && !sure.settled
  const rate = { of: chosen.rate, unit: chosen.rate.unit }
  return [
    open
      ? { words: 'From', figures: [{ ...rate, of: { ...chosen.rate, value: sure.low, text: sure.low_text }, to: sure.high_text }] }
      : { words: leave ? 'Keep' : 'Fit', figures: chosen.pair ? pairOf(chosen) : [rate] },
    { words: open ? `at ${number(chosen.rate)}` : 'with', figures: [{ of: chosen.preload, unit: `${chosen.preload.unit} preload` }] },
    ...(chosen.gap ? [{ words: 'and gap', figures: [{ of: chosen.gap, unit: 'mm' }] }] : []),
    ...oilLines(chosen),
  ]
}

/** An unequal pair: each leg's own rate. */
const pairOf = ({ pair }: Setup): Line['figures'] => [
  { of: pair!.left, unit: 'left,' },
  { of: pair!.right, unit: 'N/mm right' },
]

/** An air spring's answer: pressure, then what is set for the end of the travel. */
function airLines({ chosen, leave }: EndOk): Line[] {
  const { pressure, air_oil, second_pressure, gap, oil } = chosen
  const lines: Line[] = [{ words: leave ? 'Keep' : 'Pump to', figures: [{ of: pressure!, unit: 'bar' }] }]
  if (air_oil) lines.push(oilLine([{ of: air_oil, where: 'ml in chamber' }], ''))
  if (second_pressure) lines.push({ words: 'second', figures: [{ of: second_pressure, unit: 'bar' }] })
  if (gap && oil) lines.push({ words: 'and gap', figures: [{ of: gap, unit: 'mm' }] }, ...oilLines(chosen))
  return lines
}

/** Oil for each leg: one line where both take the same or both go the same way, else a line for each. */
export function oilLines(chosen: Candidate): Line[] {
  if (!chosen.oil) return []
  const { left, right } = chosen.oil
  if (shown(left) === shown(right)) return [oilLine([{ of: left, where: 'ml in each leg' }])]
  if (Math.sign(shown(left)) === Math.sign(shown(right))) {
    // One +/- for both, the wider, at the end of the line.
    const wider = (left.plus_minus_95 ?? 0) > (right.plus_minus_95 ?? 0) ? left : right
    const last = { ...right, plus_minus_95: wider.plus_minus_95, plus_minus_text: wider.plus_minus_text }
    return [oilLine([{ of: bare(left), where: 'ml left,' }, { of: last, where: 'right' }])]
  }
  return [oilLine([{ of: left, where: 'ml left' }]), oilLine([{ of: right, where: 'ml right' }])]
}

/** `so`: it follows from the gap above, and its +/- holds for that gap. */
function oilLine(sides: { of: Quantity; where: string }[], so: '' | 'so ' = 'so '): Line {
  const first = sides[0]!
  if (shown(first.of) === 0) return { words: 'and', figures: [], plain: untouched(first.where.replace('ml ', '')) }
  return {
    words: first.of.value > 0 ? `${so}add` : `${so}take out`,
    figures: sides.map(({ of, where }) => ({ of: size(of), unit: where })),
  }
}

const untouched = (where: string): string => (where.startsWith('in ') ? (where === 'in each leg' ? 'no oil to add' : `no oil to add ${where}`) : `${where} leg as it is`)

/** The oil as it will be read on the page: whole millilitres, with their sign. */
const shown = (oil: Quantity): number => Number(number(oil).replace('−', '-'))
