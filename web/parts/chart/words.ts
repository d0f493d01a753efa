/** What the chart shows, in words: its labels, and the description for those who hear it. */
import type { Curve, End, EndNone, EndOk, Quantity, Section, Setup } from '../../core/report.ts'
import { number, numberText, withUnit } from '../figure/text.ts'
import { hasBand } from './geometry.ts'

/** A curve that can lie beside the one shown, each with a dash of its own. */
export const OVERLAYS = { answer: 'answer', found: 'as found', standard: 'standard', built: 'built', state: 'other state' } as const
export type OverlayKind = keyof typeof OVERLAYS

export interface Overlay {
  kind: OverlayKind
  curve: Curve
  /** Of one that has a name of its own. */
  name?: string
}

export const overlayName = ({ kind, name }: Overlay): string => name ?? OVERLAYS[kind]

/** The setup that is looked at; what cannot be has no curve and no figures. */
export interface Looked {
  kind: 'answer' | 'try' | 'built' | 'as found' | 'state'
  setup: Setup | null
  curve: Curve | null
  /** At the front, even of a leg that locks: drawn up to there. */
  section?: Section | null
}

export interface Shown {
  end: End
  report: EndOk | EndNone
  curve: Curve
  /** What the curve is of, and its setup where it could be worked out. */
  kind: Looked['kind']
  setup: Setup | null
  beside: Overlay[]
}

/** A try, else the answer, else what is fitted. */
export function lookedIn(report: EndOk | EndNone): Looked {
  if (report.tried) return { kind: 'try', ...report.tried }
  const { curve, section } = report
  if (report.state === 'ok') return { kind: 'answer', setup: report.chosen, curve, section }
  return { kind: 'as found', setup: report.as_found.setup, curve, section }
}

/** What is to be drawn of an end, and what else can lie beside it. Where what is looked at cannot be, the curve is the answer's. */
export function shownOf(end: End, report: EndOk | EndNone, looked: Looked = lookedIn(report), built: Curve | null = null, over: Overlay | null = null): Shown | null {
  const answer = report.state === 'ok' ? report.curve : null
  const { kind, setup, curve } = looked.curve ? { ...looked, curve: looked.curve } : { ...lookedIn({ ...report, tried: null }), curve: report.curve }
  if (!curve) return null
  if (kind === 'state') return { end, report, kind, setup, curve, beside: over ? [over] : [] }
  const others: [OverlayKind, Curve | null][] = [
    ['answer', kind === 'answer' ? null : answer],
    ['found', kind === 'as found' ? null : report.curve_found],
    ['standard', report.curve_standard],
    ['built', kind === 'built' ? null : built],
  ]
  return { end, report, kind, setup, curve, beside: others.flatMap(([one, other]) => (other ? [{ kind: one, curve: other }] : [])) }
}

const NAMES: Record<Looked['kind'], string> = { answer: 'the answer', try: 'the try', built: 'what is built', 'as found': 'the setup as found', state: 'one state of its cartridge' }

export const strokeWords = (end: End): string => (end === 'front' ? 'mm of stroke' : 'mm of wheel travel')
export const forceWords = (end: End, springsInOne: boolean): string =>
  end === 'front' ? `kN at the wheel, ${springsInOne ? 'whole front' : 'both legs'}` : 'kN at the wheel'

/** The force wanted at full travel [kN]; null where another thing is wanted, or none of the states of a cartridge. */
export const wantedForce = ({ report, kind }: Shown): number | null => (kind !== 'state' && report.targets.end?.unit === 'kN' ? report.targets.end.value : null)

/** The words at full travel; brief beside the leg. */
export function endWords(shown: Shown, brief = false): string {
  const { setup, curve } = shown
  const force = wantedForce(shown)
  const wanted = force === null ? '' : `, wanted ${numberText(force, brief ? 1 : 2)}`
  const now = setup ? forceText(setup.end_force, brief) : kilo(curve.working.at(-1)!)
  return `full travel ${now}${wanted}`
}

/** To two decimals as the core tells it; to one where room is short. */
function forceText(force: Quantity, brief: boolean): string {
  if (!brief) return withUnit(force)
  const half = force.plus_minus_95
  return `${numberText(force.value, 1)} kN${half ? ` ±${half < 0.05 ? numberText(half, 2) : numberText(half, 1)}` : ''}`
}

/** The rates of unequal legs; empty where both are alike. */
export const pairWords = (setup: Setup | null): string =>
  setup?.pair ? `Left leg ${number(setup.pair.left)}, right leg ${number(setup.pair.right)} N/mm; their mean is ${number(setup.rate)}.` : ''

const kilo = (force: number): string => `${numberText(force, 2)} kN`

export function description(shown: Shown): string {
  const { end, curve, kind, setup, beside, report } = shown
  const travel = numberText(curve.stroke.at(-1)!, 0)
  const sentences = [
    `Force at the wheel over ${end === 'front' ? 'stroke along the leg' : 'vertical wheel travel'}, 0 to ${travel} mm, of ${NAMES[kind]}.`,
    `At full travel the springs alone give ${kilo(curve.springs.at(-1)!)}, springs and gas ${kilo(curve.working.at(-1)!)}.`,
    hasBand(curve) ? `With the gas settled it is ${kilo(curve.slow.at(-1)!)}, in a sudden move ${kilo(curve.fast.at(-1)!)}.` : '',
    curve.rubber ? `With the bump rubber it is ${kilo(curve.rubber.at(-1)!)}.` : '',
    setup ? `Free sag ${withUnit(setup.free_sag)}; rider sag ${withUnit(setup.rider_sag)} at ${kilo(report.load.aboard.value / 1000)}.` : '',
    pairWords(setup),
    ...beside.map((one) => `${capital(overlayName(one))} it ends at ${kilo(one.curve.working.at(-1)!)}.`),
    'The same figures stand in the table.',
  ]
  return sentences.filter(Boolean).join(' ')
}

const capital = (text: string): string => text[0]!.toUpperCase() + text.slice(1)
