/** Jobs on this device, in the browser's own database: the worked demo and the user's own, each with its last answer. */
import { type DBSchema, type IDBPDatabase, openDB } from 'idb'
import type { EndReport, Report } from '../core/report.ts'
import type { JobDocument } from './document.ts'
import { forget, unwritten, writeDown } from './lastwords.ts'

export type Slot = 'demo' | 'own'

export interface Kept {
  job: JobDocument
  report: Report | null
  /** The last good result of each end, which a refused entry in the job does not take away. */
  good: { front: EndReport | null; rear: EndReport | null }
}

interface Schema extends DBSchema {
  jobs: { key: Slot; value: Kept }
  settings: { key: 'current'; value: Slot }
}

// A browser that will not open a database must not keep the page from opening.
const PATIENCE = 1500

let opened: Promise<IDBPDatabase<Schema>> | undefined

function database(): Promise<IDBPDatabase<Schema>> {
  opened ??= Promise.race([
    openDB<Schema>('stanchion', 1, {
      upgrade(db) {
        db.createObjectStore('jobs')
        db.createObjectStore('settings')
      },
    }),
    new Promise<never>((_, reject) => setTimeout(() => reject(new Error('the database did not open')), PATIENCE)),
  ])
  return opened
}

/** What was kept: the job that was open last, or a named one. An edit that did not reach the database stands over its old answer. */
export async function recall(named?: Slot): Promise<{ slot: Slot; kept: Kept } | undefined> {
  const left = unwritten()
  const edited = left && (named ?? left.slot) === left.slot ? left : undefined
  try {
    const db = await database()
    const slot = named ?? edited?.slot ?? (await db.get('settings', 'current'))
    const kept = slot && (await db.get('jobs', slot))
    if (slot && kept) return { slot, kept: edited ? { ...kept, job: edited.job } : kept }
  } catch (error) {
    if (!edited) throw error
  }
  return edited && { slot: edited.slot, kept: { job: edited.job, report: null, good: { front: null, rear: null } } }
}

/** Writes go one after another, so that an older state never lands on top of a newer one. */
let writing: Promise<unknown> = Promise.resolve()

/** Keep a job as the one that is open. The job is safe when this returns; its answer when the promise is kept. */
export function keep(slot: Slot, kept: Kept): Promise<void> {
  const token = writeDown({ slot, job: kept.job })
  const written = writing.then(() => write(slot, kept)).then(() => forget(token))
  writing = written.catch(() => undefined)
  return written
}

async function write(slot: Slot, kept: Kept): Promise<void> {
  const going = (await database()).transaction(['jobs', 'settings'], 'readwrite')
  await Promise.all([going.objectStore('jobs').put(kept, slot), going.objectStore('settings').put(slot, 'current'), going.done])
}
