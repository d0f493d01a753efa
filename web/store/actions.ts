/** What the hand can do to a job. Every change is kept and worked out at once. */
import type { End } from '../core/report.ts'
import type { FieldPath, Origin } from '../generated/schema.ts'
import { type Entry, entryAt, type JobDocument, type OwnRange, typed, withEntry, withRange, withTick } from './document.ts'
import { job } from './index.ts'
import { keep } from './keep.ts'
import type { OfferDocument } from './offer.ts'
import type { RangeRow } from './ranges.ts'
import { schema } from './schema.ts'
import { today } from './today.ts'
import { workOut } from './work.ts'

/** `step` names what is edited: typing on at one field is one step of undo. */
function change(next: JobDocument, step: string, first?: End): void {
  // Kept first: its row is on the way before anything is drawn.
  keep({ job: next, step })
  job.value = next
  void workOut(first)
}

/** What was typed at a field; empty text empties the field. */
export function type(path: FieldPath, value: string, origin: Origin): void {
  const entry = value.trim() === '' ? undefined : typed(entryAt(job.value, path), value, origin)
  change(withEntry(job.value, path, entry), path, endOf(path))
}

const endOf = (path: FieldPath): End => (schema.fields[path].end === 'rear' ? 'rear' : 'front')

/** Change what is said of an entry beside its value: its origin, its +/-, its note. */
export function amend(path: FieldPath, said: Partial<Pick<Entry, 'origin' | 'plus_minus_95' | 'note'>>): void {
  const entry = entryAt(job.value, path)
  if (!entry) return
  const next = { ...entry, ...said }
  if (next.plus_minus_95 === '') delete next.plus_minus_95
  if (next.note === '') delete next.note
  change(withEntry(job.value, path, next), `${path} ${Object.keys(said).join()}`)
}

/** Empty fields, several at once. */
export function clear(...paths: FieldPath[]): void {
  change(paths.reduce((next, path) => withEntry(next, path, undefined), job.value), '')
}

/** Several entries in one step, as stated; the paths besides are emptied first. */
export function enter(entries: [path: FieldPath, text: string][], emptied: FieldPath[]): void {
  const empty = emptied.reduce((next, path) => withEntry(next, path, undefined), job.value)
  const next = entries.reduce((now, [path, value]) => withEntry(now, path, { value, origin: 'stated' }), empty)
  change(next, '', endOf(emptied[0]!))
}

/** A range of the user's own: the three numbers as typed, those not touched as the trade has them. */
export function setRange({ name, low, typical, high }: RangeRow, own: OwnRange | undefined): void {
  change(withRange(job.value, name, own && { low, typical, high, ...own }), `range ${name}`)
}

/** The offer as it is now; `step` names what is edited in it, empty for what is a step by itself. */
export function offer(next: OfferDocument, step: string): void {
  change({ ...job.value, offer: next }, step && `offer ${step}`)
}

/** Tick a check as made today, or take the tick back. */
export function tick(key: string, made: boolean): void {
  change(withTick(job.value, key, made ? today() : undefined), '')
}

/** Say of the open job whose bike it is, which, and when. */
export function head(said: Partial<Pick<JobDocument, 'name' | 'owner' | 'date'>>): void {
  change({ ...job.value, ...said }, Object.keys(said).join())
}
