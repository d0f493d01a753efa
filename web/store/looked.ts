/** The setup that is looked at: the answer, what is tried beside it, or what was built. Strip, picture and conditions show it. */
import type { Curve, End, EndNone, EndOk, EndReport, Place, Problem, Section, Setup } from '../core/report.ts'
import { reports } from './index.ts'
import { side } from './place.ts'
import { stateSeen } from './states.ts'

export type Kind = 'answer' | 'try' | 'built' | 'as found' | 'state'

export interface Looked {
  kind: Kind
  report: EndOk | EndNone
  /** Null where it cannot be: then `problem` says why. */
  setup: Setup | null
  curve: Curve | null
  /** Of the front, even of a leg that locks: up to there. */
  section: Section | null
  problem: Problem | null
  places: Place[]
}

export const sized = (report: EndReport | null): EndOk | EndNone | null => (report && report.state !== 'refused' ? report : null)

/** What is built at an end, once something is. */
export const builtOf = (end: End) => sized(reports[end].value.report)?.built ?? null

export function lookedAt(end: End): Looked | null {
  const report = sized(reports[end].value.report)
  if (!report) return null
  const seen = end === 'front' ? stateSeen(0) : undefined
  if (seen) return { kind: 'state', report, setup: seen.setup, curve: seen.curve, section: seen.section, problem: null, places: [] }
  const { built, tried } = report
  if (side.value === 'built' && built) return { kind: 'built', report, setup: built.setup, curve: built.curve, section: built.section, problem: built.problem, places: built.conditions }
  const answer = recommended(report)
  if (side.value === 'built' || !tried) return answer
  return { ...answer, kind: 'try', setup: tried.setup, curve: tried.curve, section: tried.section, problem: tried.problem }
}

/** The answer; where no spring fits, what is in the bike. */
export function recommended(report: EndOk | EndNone): Looked {
  const { curve, section, conditions: places } = report
  if (report.state === 'ok') return { kind: 'answer', report, setup: report.chosen, curve, section, problem: null, places }
  return { kind: 'as found', report, setup: report.as_found.setup, curve, section, problem: report.as_found.problem, places }
}
