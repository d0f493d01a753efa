/** What the chart shows, in words: its labels, and the description for those who hear it. */
import type { Curve, End, EndNone, EndOk, Setup } from '../../core/report.ts'
import { numberText, told } from '../figure/told.ts'
import { hasBand } from './geometry.ts'

export interface Shown {
  end: End
  report: EndOk | EndNone
  curve: Curve
  /** The setup that the working curve is of, where it could be worked out. */
  setup: Setup | null
  found: Curve | null
  tried: Curve | null
}

const kilo = (force: number): string => `${numberText(force, 2)} kN`

/** What is to be drawn of an end: the chosen setup, or the found one where none was chosen. */
export function shownOf(end: End, report: EndOk | EndNone): Shown | null {
  if (!report.curve) return null
  const chosen = report.state === 'ok' ? report.chosen : null
  return {
    end,
    report,
    curve: report.curve,
    setup: chosen ?? report.as_found.setup,
    found: chosen ? report.curve_found : null,
    tried: report.tried?.curve ?? null,
  }
}

export const strokeWords = (end: End): string => (end === 'front' ? 'mm of stroke' : 'mm of wheel travel')
export const forceWords = (end: End, springsInOne: boolean): string =>
  end === 'front' ? `kN at the wheel, ${springsInOne ? 'whole front' : 'both legs'}, vertical` : 'kN at the wheel, vertical'

export function endWords({ report, setup, curve }: Shown): string {
  const { end } = report.targets
  const target = end && end.unit === 'kN' ? `, target ${numberText(end.value, end.decimals)}` : ''
  return `end ${setup ? told(setup.end_force) : kilo(curve.working.at(-1)!)}${target}`
}

export function description(shown: Shown): string {
  const { end, curve, setup, found, tried, report } = shown
  const travel = numberText(curve.stroke.at(-1)!, 0)
  const which = report.state === 'ok' ? 'the recommended setup' : 'the setup as found'
  const sentences = [
    `Force at the wheel over ${end === 'front' ? 'stroke along the leg' : 'vertical wheel travel'}, 0 to ${travel} mm, of ${which}.`,
    `At full travel the springs alone give ${kilo(curve.springs.at(-1)!)}, springs and gas ${kilo(curve.working.at(-1)!)}.`,
    hasBand(curve) ? `Slow it is ${kilo(curve.slow.at(-1)!)}, fast ${kilo(curve.fast.at(-1)!)}.` : '',
    setup ? `Free sag ${told(setup.free_sag)}; rider sag ${told(setup.rider_sag)} at ${kilo(report.load.aboard.value / 1000)}.` : '',
    found ? `As found it ends at ${kilo(found.working.at(-1)!)}.` : '',
    tried ? `As tried it ends at ${kilo(tried.working.at(-1)!)}.` : '',
    'The same figures stand in the table behind the chart.',
  ]
  return sentences.filter(Boolean).join(' ')
}
