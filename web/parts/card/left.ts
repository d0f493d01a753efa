/** What the card says an end is left as. */
import type { End, EndReport, Quantity, Setup } from '../../core/report.ts'
import type { FieldPath } from '../../generated/schema.ts'
import { stateOf } from '../../store/fields.ts'
import { plain } from '../../store/text.ts'
import type { Looked } from '../../store/looked.ts'
import { sized } from '../../store/looked.ts'
import { number } from '../figure/text.ts'
import type { Left } from './rows.ts'

/** Built, or a draft: the recommendation, which nobody has built yet. */
export function leftOf(looked: Looked | null): Left | null {
  if (!looked) return null
  const { report } = looked
  if (looked.kind === 'built') return looked.setup && { setup: looked.setup, built: true, head: 'as left', gaps: gapsBuilt(looked.setup) }
  return report.state === 'ok' ? { setup: report.chosen, built: false, head: 'draft', oil: report.chosen.oil } : null
}

/** As they were read back, each leg its own. */
function gapsBuilt(setup: Setup): [Quantity, Quantity] | undefined {
  const [left, right] = (['front.built_gap_left', 'front.built_gap_right'] as FieldPath[]).map((path) => stateOf(path)?.value)
  if (!setup.gap || typeof left !== 'number' || typeof right !== 'number') return undefined
  const of = (value: number): Quantity => ({ ...setup.gap!, value, text: plain(value), plus_minus_95: null, plus_minus_text: '' })
  return [of(left), of(right)]
}

/** A built setup in one line. */
export function builtWords(end: End, setup: Setup): string {
  const gaps = end === 'front' ? gapsBuilt(setup) : undefined
  const spring = setup.pressure ? `${number(setup.pressure)} bar` : `${rates(setup)} N/mm, ${number(setup.preload)} mm preload`
  return `${spring}${gaps ? `, gap ${number(gaps[0])} left, ${number(gaps[1])} right` : ''}.`
}

const rates = ({ pair, rate }: Setup) => (pair ? `${number(pair.left)} left, ${number(pair.right)} right` : number(rate))

/** Whether what was built is the recommendation, in the figures that the page shows. */
export function sameSetup(end: End, built: Setup, report: EndReport | null): boolean {
  const done = sized(report)
  if (done?.state !== 'ok') return false
  const { chosen } = done
  const gaps = end === 'front' ? gapsBuilt(built) : undefined
  const same = (one: Quantity | null | undefined, other: Quantity | null | undefined) => (one && number(one)) === (other && number(other))
  const legs = gaps ? gaps.every((gap) => same(gap, chosen.gap)) : true
  return same(built.pressure, chosen.pressure) && same(built.rate, chosen.rate) && !built.pair === !chosen.pair && (built.pressure ? true : same(built.preload, chosen.preload)) && legs
}
