/** The job document, as it stands in a job file: what people typed, never what the core made of it. */
import type { FieldPath, Group, Origin } from '../generated/schema.ts'
import type { OfferDocument } from './offer.ts'

/** One field as entered. `value` is the text as typed. */
export interface Entry {
  value: string | number | null
  plus_minus_95?: string | number
  origin?: Origin
  note?: string
}

/** A bare string or number is short for a stated value. */
type Stored = Entry | string | number | null

export type JobDocument = {
  format: string
  version: number
  /** The bike. */
  name: string
  /** Whose it is; files of version 1 know none. */
  owner?: string
  date: string
  invented: boolean
  note: string
  /** The user's own ranges, in place of the trade's. */
  practice?: Record<string, OwnRange>
  /** Options side by side, for the customer to choose from. */
  offer?: OfferDocument
  /** The work done: the day of each check that was made, by its key. */
  work?: { ticks?: Record<string, string>; note?: string }
} & { [group in Group]?: Record<string, Stored> }

export type OwnRange = Partial<Record<'low' | 'typical' | 'high', string | number>>

function parts(path: FieldPath): [Group, string] {
  const [group, key] = path.split('.') as [Group, string]
  return [group, key]
}

/** What is entered at a field; undefined where nothing is. */
export function entryAt(job: JobDocument, path: FieldPath): Entry | undefined {
  const [group, key] = parts(path)
  const stored = job[group]?.[key]
  if (stored === undefined || stored === null) return undefined
  if (typeof stored !== 'object') return { value: stored, origin: 'stated' }
  return stored.value === null ? undefined : stored
}

/** The job with a range of the user's own; undefined takes the trade's again. */
export function withRange(job: JobDocument, row: string, range: OwnRange | undefined): JobDocument {
  const { [row]: _, ...others } = job.practice ?? {}
  return { ...job, practice: range ? { ...others, [row]: range } : others }
}

/** The job with a check made on a day, or not made after all. */
export function withTick(job: JobDocument, key: string, day: string | undefined): JobDocument {
  const { [key]: _, ...others } = job.work?.ticks ?? {}
  return { ...job, work: { ...job.work, ticks: day ? { ...others, [key]: day } : others } }
}

/** The text that is entered at a field; empty where nothing is. */
export function textAt(job: JobDocument, path: FieldPath): string {
  return String(entryAt(job, path)?.value ?? '')
}

/** The job with another entry at a field. Without one the field is empty again: assumed, or not known. */
export function withEntry(job: JobDocument, path: FieldPath, entry: Entry | undefined): JobDocument {
  const [group, key] = parts(path)
  const { [key]: _, ...others } = job[group] ?? {}
  return { ...job, [group]: entry ? { ...others, [key]: entry } : others }
}

/** A newly typed value says what it is; the +/- and the origin of an assumption do not outlive it. */
export function typed(entry: Entry | undefined, value: string, origin: Origin): Entry {
  if (!entry || entry.origin === 'assumed') return { ...(entry?.note ? { note: entry.note } : {}), value, origin }
  return { ...entry, value }
}

/** Whether something kept or received has the shape of a job document. */
export function isJob(value: unknown): value is JobDocument {
  return typeof value === 'object' && value !== null && (value as Partial<JobDocument>).format === FORMAT
}

const FORMAT = 'stanchion-job'

/** A job that an earlier version kept, as this one writes it: before version 3 its conditions stood under another name. */
export function asNow(job: JobDocument & { elsewhere?: Record<string, Stored> }): JobDocument {
  if (job.version >= 4) return job
  const { elsewhere, ...others } = job
  return { ...others, version: 4, ...(elsewhere && { conditions: elsewhere }) }
}

/** A job in which nothing is known. */
export const EMPTY: JobDocument = { format: FORMAT, version: 4, name: '', owner: '', date: '', invented: false, note: '' }
