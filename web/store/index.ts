/** The state of the page: the job, what the core last said of it, and what is still good of that. Views only read it. */
import { batch, computed, type ReadonlySignal, type Signal, signal } from '@preact/signals'
import type { End, EndNone, EndOk, EndReport, Figures, PartReport, Problem, Report, Setup } from '../core/report.ts'
import { REPORT_VERSION } from '../generated/version.ts'
import { type Answer, NO_ANSWER } from './database.ts'
import { EMPTY, type JobDocument } from './document.ts'

/** One end as it is shown: its last good result, why that may be old, and what is wrong now. */
export interface EndView {
  report: EndReport | null
  stale: 'no' | 'saved' | 'last good'
  problems: Problem[]
}

const NOTHING: EndView = { report: null, stale: 'no', problems: [] }

export const job = signal<JobDocument>(EMPTY)
/** Which job is open; a demo's name begins with "demo:". */
export const openId = signal('')
export const report = signal<Report | null>(null)
export const reports: Record<End, Signal<EndView>> = { front: signal(NOTHING), rear: signal(NOTHING) }
/** The figures of an end that is just being edited, ahead of its report; null where the report says all that is known. */
export const ahead: Record<End, Signal<Figures | null>> = { front: signal(null), rear: signal(null) }
/** Whether the bench push that stands is that of the job before: it comes with the bands. */
export const pushOld = signal(false)
/** The same of the states of a fork. */
export const statesOld = signal(false)
/** The same of what the offer's options do. */
export const optionsOld = signal(false)
/** The ends whose damping is that of the job before. */
export const dampingOld = signal<readonly End[]>([])
/** Why the core refused the whole document, where it did. */
export const refusal = signal('')
/** Why a job could not be opened, where that is so. */
export const openFailed = signal('')

export const endProblems: ReadonlySignal<Problem[]> = computed(() => [...reports.front.value.problems, ...reports.rear.value.problems])

/** Take an end's figures: null where there are none, and then the report says why. */
export function heardFigures(end: End, figures: Figures | null): void {
  const shown = reports[end].value
  // Figures that are in sight already keep their bands.
  const known = shown.stale !== 'last good' && shown.report?.state === 'ok' && figures && within(figures.setup, shown.report.chosen)
  ahead[end].value = known ? null : figures
}

/** Take what the core says now, with its bands or before them. A refused end keeps its last good result. */
export function heard(next: Report, bands: boolean): void {
  batch(() => {
    const before = report.value
    const news = [take('front', next.ends.front, bands), take('rear', next.ends.rear, bands)].includes(true) || bands
    const fields = keepSame(before?.fields, next.fields)
    // Like the ends themselves, what compares them keeps its bands where nothing new is said.
    report.value = { ...next, ...ofBands(next, bands), fields, attitude: before && !news ? before.attitude : next.attitude }
  })
}

/** Take what the core says of one end; the other, and what compares the two, stand. */
export function heardPart({ axle, end, ...next }: PartReport, bands: boolean): void {
  batch(() => {
    const before = report.value
    take(axle, end, bands)
    if (before) report.value = { ...before, ...next, ...ofBands(next, bands), fields: keepSame(before.fields, next.fields), ends: { ...before.ends, [axle]: end } }
  })
}

/** What comes with the bands only. */
const ofBands = (next: Told, bands: boolean) => ({ ...pushOf(next, bands), ...statesOf(next, bands), ...optionsOf(next, bands), ...dampingOf(next, bands) })

type Told = Pick<Report, 'push' | 'states' | 'offer' | 'options' | 'damping' | 'fields'>

/** The bench push stands until the bands bring the new one, as long as there is one. */
function pushOf(next: Pick<Report, 'push' | 'fields'>, bands: boolean): Pick<Report, 'push'> {
  const waits = !bands && !!next.fields['front.push_points']?.pairs.length
  pushOld.value = waits
  return { push: waits ? (report.value?.push ?? null) : next.push }
}

/** So do the states of a fork, as long as its cartridge is one. */
function statesOf(next: Pick<Report, 'states' | 'fields'>, bands: boolean): Pick<Report, 'states'> {
  const held = !bands && next.fields['front.air']?.value === 'sealed cartridge' ? (report.value?.states ?? null) : null
  statesOld.value = held !== null
  return { states: held ?? next.states }
}

/** And what the options do, as long as there are any. */
function optionsOf(next: Pick<Report, 'offer' | 'options'>, bands: boolean): Pick<Report, 'options'> {
  const waits = !bands && !!next.offer?.options.length
  optionsOld.value = waits
  return { options: waits ? (report.value?.options ?? null) : next.options }
}

/** Damping stands until the bands bring it anew, end by end. */
function dampingOf(next: Pick<Report, 'damping'>, bands: boolean): Pick<Report, 'damping'> {
  const before = report.value?.damping ?? []
  const kept = before.filter(({ axle }) => !next.damping.some((one) => one.axle === axle))
  dampingOld.value = bands ? dampingOld.value.filter((axle) => kept.some((one) => one.axle === axle)) : kept.map(({ axle }) => axle)
  return { damping: [...next.damping, ...kept] }
}

/** Take one end; whether that is news. */
function take(end: End, now: EndReport, bands: boolean): boolean {
  refusal.value = ''
  const before = reports[end].value
  reports[end].value = follow(before, now, bands)
  ahead[end].value = null
  return reports[end].value.report !== before.report
}

/** Fields of which the same is said keep their identity, by which their views know that nothing changed. */
function keepSame(before: Report['fields'] | undefined, now: Report['fields']): Report['fields'] {
  const kept = { ...now }
  for (const [path, state] of Object.entries(now)) {
    const old = before?.[path]
    if (old && JSON.stringify(old) === JSON.stringify(state)) kept[path] = old
  }
  return kept
}

export function follow(before: EndView, now: EndReport, bands: boolean): EndView {
  if (now.state === 'refused') return { report: before.report, stale: before.report ? 'last good' : 'no', problems: now.problems }
  // An end that says nothing new waits for its bands, so that those in sight do not flicker.
  if (!bands && before.report && sameButBands(before.report, now))
    return { report: before.report, stale: before.stale === 'saved' ? 'saved' : 'no', problems: now.problems }
  return { report: bands ? now : withThoseBefore(now, before.report), stale: 'no', problems: now.problems }
}

/** What comes with the bands, a moment after the figures: till then the rows before stay in sight, and so does whom the spring holds for. */
function withThoseBefore(now: EndOk | EndNone, before: EndReport | null): EndReport {
  if (!before || before.state === 'refused') return now
  const conditions = now.conditions.length > 0 ? now.conditions : before.conditions
  if (now.state !== 'ok' || before.state !== 'ok' || step(now.chosen) !== step(before.chosen)) return { ...now, conditions }
  return { ...now, conditions, holds_for: now.holds_for ?? before.holds_for }
}

/** What the answer chooses by: a spring's rate, an air spring's pressure. */
const step = ({ pressure, rate }: Setup) => (pressure ?? rate).value

const OF_BANDS = ['plus_minus_95', 'plus_minus_text', 'sure', 'measure_next', 'conditions', 'answer', 'holds_for']

/** Whether two results are the same, whatever is known of their bands. */
function sameButBands(one: EndReport, other: EndReport): boolean {
  return plain(one) === plain(other)
}

const plain = (end: unknown) => JSON.stringify(end, (key, value: unknown) => (OF_BANDS.includes(key) ? null : value))

/** Whether a setup's figures are those of another, whatever is known of their bands. */
const within = (figures: Setup, setup: Setup) => (Object.keys(figures) as (keyof Setup)[]).every((key) => plain(figures[key]) === plain(setup[key]))

/** Put a kept job on the page with its answer, marked until it is worked out again. */
export function show(id: string, next: JobDocument, kept: Answer): void {
  // What another version of the core said of a job is dropped: it lacks what this page shows.
  const answer = kept.report?.version === REPORT_VERSION ? kept : NO_ANSWER
  batch(() => {
    openId.value = id
    job.value = next
    report.value = answer.report
    dampingOld.value = []
    refusal.value = ''
    for (const end of ['front', 'rear'] as const) {
      const good = answer.good[end]
      const now = answer.report?.ends[end]
      reports[end].value = { report: good, stale: good ? staleBy(now) : 'no', problems: now?.problems ?? [] }
      ahead[end].value = null
    }
  })
}

const staleBy = (now: EndReport | undefined) => (now?.state === 'refused' ? 'last good' : 'saved')

/** What stands is no longer known to be true: mark it until it is worked out again. */
export function markStale(): void {
  batch(() => {
    for (const end of ['front', 'rear'] as const) {
      const view = reports[end].value
      if (view.report && view.stale === 'no') reports[end].value = { ...view, stale: 'saved' }
      ahead[end].value = null
    }
  })
}

/** Keep the job and drop what was said of it. */
export function forgetAnswers(): void {
  show(openId.value, job.value, NO_ANSWER)
}

/** What stands on the page as the answer, for keeping. */
export function answerShown(): Answer {
  return { report: report.value, good: { front: reports.front.value.report, rear: reports.rear.value.report } }
}
