/** What the chart shows, in words: its labels, and the description for those who hear it. */
import type { Curve, End, EndNone, EndOk, Setup } from '../../core/report.ts'
import { side } from '../../store/place.ts'
import { numberText, rateText, told } from '../figure/told.ts'
import { hasBand } from './geometry.ts'

/** A curve that can lie beside the one shown, each with a dash of its own. */
export const OVERLAYS = { answer: 'answer', found: 'as found', standard: 'standard', built: 'built', tried: 'tried' } as const
export type OverlayKind = keyof typeof OVERLAYS

export interface Overlay {
  kind: OverlayKind
  curve: Curve
}

export interface Shown {
  end: End
  report: EndOk | EndNone
  curve: Curve
  /** What the working curve is of, in words, and its setup where it could be worked out. */
  what: string
  setup: Setup | null
  beside: Overlay[]
}

/** What is to be drawn of an end: what was built where that is looked at, else a try, the answer, or as found; and what else can lie beside it. */
export function shownOf(end: End, report: EndOk | EndNone, built: Curve | null = null): Shown | null {
  if (!report.curve) return null
  const shown = mainOf(report)
  const others: [OverlayKind, Curve | null | undefined][] = [
    ['answer', shown.curve !== report.curve && report.state === 'ok' ? report.curve : null],
    ['found', report.state === 'ok' ? report.curve_found : null],
    ['standard', report.curve_standard],
    ['built', shown.curve === built ? null : built],
  ]
  return { end, report, ...shown, beside: others.flatMap(([kind, curve]) => (curve ? [{ kind, curve }] : [])) }
}

function mainOf(report: EndOk | EndNone): Pick<Shown, 'curve' | 'what' | 'setup'> {
  const { tried, built } = report
  if (side.value === 'built' && built?.curve) return { curve: built.curve, what: 'what was built', setup: built.setup }
  if (side.value === 'answer' && tried?.curve) return { curve: tried.curve, what: 'the try', setup: tried.setup }
  if (report.state === 'ok') return { curve: report.curve!, what: 'the answer', setup: report.chosen }
  return { curve: report.curve!, what: 'the setup as found', setup: report.as_found.setup }
}

export const strokeWords = (end: End): string => (end === 'front' ? 'mm of stroke' : 'mm of wheel travel')
export const forceWords = (end: End, springsInOne: boolean): string =>
  end === 'front' ? `kN at the wheel, ${springsInOne ? 'whole front' : 'both legs'}` : 'kN at the wheel'

/** The force wanted at full travel [kN]; null where another thing is wanted. */
export const wantedForce = ({ report }: Shown): number | null => (report.targets.end?.unit === 'kN' ? report.targets.end.value : null)

/** The words at full travel; brief beside the leg. */
export function endWords(shown: Shown, brief = false): string {
  const { setup, curve } = shown
  const force = wantedForce(shown)
  const wanted = force === null ? '' : `, wanted ${numberText(force, brief ? 1 : 2)}`
  const now = setup ? told(brief ? { ...setup.end_force, decimals: 1 } : setup.end_force) : kilo(curve.working.at(-1)!)
  return `full travel ${now}${wanted}`
}

/** The rates of unequal legs; empty where both are alike. */
export const pairWords = (setup: Setup | null): string =>
  setup?.pair ? `Left leg ${rateText(setup.pair.left.value)}, right leg ${rateText(setup.pair.right.value)} N/mm; their mean is ${rateText(setup.rate.value)}.` : ''

const kilo = (force: number): string => `${numberText(force, 2)} kN`

export function description(shown: Shown): string {
  const { end, curve, what, setup, beside, report } = shown
  const travel = numberText(curve.stroke.at(-1)!, 0)
  const sentences = [
    `Force at the wheel over ${end === 'front' ? 'stroke along the leg' : 'vertical wheel travel'}, 0 to ${travel} mm, of ${what}.`,
    `At full travel the springs alone give ${kilo(curve.springs.at(-1)!)}, springs and gas ${kilo(curve.working.at(-1)!)}.`,
    hasBand(curve) ? `With the gas settled it is ${kilo(curve.slow.at(-1)!)}, in a sudden move ${kilo(curve.fast.at(-1)!)}.` : '',
    curve.rubber ? `With the bump rubber it is ${kilo(curve.rubber.at(-1)!)}.` : '',
    setup ? `Free sag ${told(setup.free_sag)}; rider sag ${told(setup.rider_sag)} at ${kilo(report.load.aboard.value / 1000)}.` : '',
    pairWords(setup),
    ...beside.map((one) => `${capital(OVERLAYS[one.kind])} it ends at ${kilo(one.curve.working.at(-1)!)}.`),
    'The same figures stand in the table.',
  ]
  return sentences.filter(Boolean).join(' ')
}

const capital = (text: string): string => text[0]!.toUpperCase() + text.slice(1)
