/** What the hand can do to a job. Every change is worked out and kept at once. */
import type { Core } from '../core/client.ts'
import type { CoreReply, CoreRequest } from '../core/boundary.ts'
import { latestOnly } from '../core/latest.ts'
import type { End, Report } from '../core/report.ts'
import demos from '../generated/demos.json'
import type { FieldPath, Origin } from '../generated/schema.ts'
import { type Entry, entryAt, type JobDocument, type OwnRange, typed, withEntry, withRange } from './document.ts'
import { heard, heardFigures, heardPart, job, keepFailed, ownJob, refusal, show, slot, snapshot } from './index.ts'
import { keep, type Kept, recall } from './keep.ts'
import type { RangeRow } from './ranges.ts'
import { schema } from './schema.ts'

const BOTH: readonly End[] = ['front', 'rear']
const EMPTY = { front: null, rear: null }

let core: Core | undefined
let ask: (request: CoreRequest) => Promise<CoreReply | undefined>

// Bands are many answers in one, and cannot be interrupted: they wait until the hand rests, and may take their time.
const REST = 800
const BANDS_LIMIT = 60_000

/** From now on every change goes to this core. */
export function connect(to: Core): void {
  core = to
  ask = latestOnly((request) => to.ask(request, request.kind === 'size' && request.bands ? BANDS_LIMIT : undefined))
}

/** Work the job out and keep what came of it: the figures of the end just edited at once, then both ends, and their bands once
 * the hand rests. No answer can be interrupted, so none is longer than it need be; what the next needs of it, the core keeps. */
export async function workOut(first: End = 'front'): Promise<void> {
  const asked = job.value
  const rested = new Promise((resolve) => setTimeout(resolve, REST))
  await figures(asked, first)
  if (!(await size(asked, BOTH, false))) return
  await rested
  if (job.value === asked && (await size(asked, [first], true))) await size(asked, BOTH, true)
}

async function figures(asked: JobDocument, end: End): Promise<void> {
  const reply = await ask({ kind: 'figures', job: asked, end }).catch(() => undefined)
  if (reply?.kind === 'figures' && job.value === asked) heardFigures(end, reply.figures)
}

/** False when nothing came of it: overtaken, refused, or the core's own state says why on the page. */
async function size(asked: JobDocument, ends: readonly End[], bands: boolean): Promise<boolean> {
  if (job.value !== asked) return false
  const reply = await ask({ kind: 'size', job: asked, bands, ends }).catch(() => undefined)
  if (!reply || job.value !== asked) return false
  if (reply.kind === 'failure') refusal.value = reply.message
  if (reply.kind === 'report') heard(reply.report, bands)
  else if (reply.kind === 'part') heardPart(reply.report, bands)
  else return false
  if (ends === BOTH) save()
  return true
}

export function save(): void {
  keep(slot.value, snapshot())
    .then(() => void (keepFailed.value = ''))
    .catch((error: Error) => void (keepFailed.value = error.message))
}

function change(next: JobDocument, first?: End): void {
  job.value = next
  // The question first: it is answered while the job is being kept.
  void workOut(first)
  save()
}

/** What was typed at a field; empty text empties the field. */
export function type(path: FieldPath, value: string, origin: Origin): void {
  const entry = value.trim() === '' ? undefined : typed(entryAt(job.value, path), value, origin)
  change(withEntry(job.value, path, entry), endOf(path))
}

const endOf = (path: FieldPath): End => (schema.fields[path].end === 'rear' ? 'rear' : 'front')

/** Change what is said of an entry beside its value: its origin, its +/-, its note. */
export function amend(path: FieldPath, said: Partial<Pick<Entry, 'origin' | 'plus_minus_95' | 'note'>>): void {
  const entry = entryAt(job.value, path)
  if (!entry) return
  const next = { ...entry, ...said }
  if (next.plus_minus_95 === '') delete next.plus_minus_95
  if (next.note === '') delete next.note
  change(withEntry(job.value, path, next))
}

/** Empty fields, several at once. */
export function clear(...paths: FieldPath[]): void {
  change(paths.reduce((next, path) => withEntry(next, path, undefined), job.value))
}

/** A range of the user's own: the three numbers as typed, those not touched as the trade has them. */
export function setRange({ name, low, typical, high }: RangeRow, own: OwnRange | undefined): void {
  change(withRange(job.value, name, own && { low, typical, high, ...own }))
}

export function head(said: Partial<Pick<JobDocument, 'name' | 'date'>>): void {
  change({ ...job.value, ...said })
}

/** Put another job on the page; it becomes the user's own. */
export function open(next: JobDocument): void {
  show('own', { job: next, report: null, good: EMPTY })
  save()
  // From little data the first answer is a span, never one rate: it waits for its bands.
  void size(job.value, BOTH, true)
}

/** A new job from two answers. Returns what is wrong with them, or nothing. */
export async function start(use: string, rider: string): Promise<string | undefined> {
  if (!core) return undefined
  const reply = await core.ask({ kind: 'start', use, rider }).catch((error: Error) => ({ kind: 'failure' as const, message: error.message }))
  if (reply.kind === 'failure') return reply.message
  if (reply.kind === 'job') open({ ...reply.job, date: today() })
  return undefined
}

/** Open a job file. Returns what is wrong with it, or nothing; a refused file changes nothing. */
export async function openFile(text: string): Promise<string | undefined> {
  let next: unknown
  try {
    next = JSON.parse(text)
  } catch {
    return 'This file is not JSON, so it is no job file.'
  }
  const reply = await core!.ask({ kind: 'size', job: next as JobDocument, bands: false, ends: BOTH }).catch((error: Error) => ({ kind: 'failure' as const, message: error.message }))
  if (reply.kind === 'failure') return reply.message
  open(next as JobDocument)
  return undefined
}

/** The worked demos, each a file of its own: fetched when shown, and kept for offline use like every file. */
const DEMOS = import.meta.glob<string>('../generated/demos/*.json', { query: '?url', import: 'default', eager: true })

async function demo(key = demos[0]!.key): Promise<Kept> {
  const answered = await fetch(DEMOS[`../generated/demos/${key}.json`]!)
  const { job, report } = (await answered.json()) as { job: JobDocument; report: Report }
  return { job, report, good: report.ends }
}

export async function showDemo(key: string): Promise<void> {
  show('demo', await demo(key))
  save()
  void workOut()
}

export async function showOwn(): Promise<void> {
  const found = await recall('own')
  if (!found) return
  show('own', found.kept)
  save()
  void workOut()
}

/** What was open last, or the demo on the first visit. */
export async function reopen(): Promise<void> {
  const found = await recall().catch((error: Error) => void (keepFailed.value = error.message))
  if (found) show(found.slot, found.kept)
  else show('demo', await demo())
  void recall('own')
    .then((own) => void (ownJob.value ||= own !== undefined))
    .catch(() => undefined)
}

function today(): string {
  const now = new Date()
  return [now.getFullYear(), String(now.getMonth() + 1).padStart(2, '0'), String(now.getDate()).padStart(2, '0')].join('-')
}
