/** Jobs on this device, in the browser's own database: the worked demo and the user's own, each with its last answer. */
import { type DBSchema, type IDBPDatabase, openDB } from 'idb'
import type { EndReport, Report } from '../core/report.ts'
import type { JobDocument } from './document.ts'

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

/** What was kept: the job that was open last, or a named one. */
export async function recall(named?: Slot): Promise<{ slot: Slot; kept: Kept } | undefined> {
  const db = await database()
  const slot = named ?? (await db.get('settings', 'current'))
  const kept = slot && (await db.get('jobs', slot))
  return slot && kept ? { slot, kept } : undefined
}

/** Keep a job as the one that is open. */
export async function keep(slot: Slot, kept: Kept): Promise<void> {
  const writing = (await database()).transaction(['jobs', 'settings'], 'readwrite')
  await Promise.all([writing.objectStore('jobs').put(kept, slot), writing.objectStore('settings').put(slot, 'current'), writing.done])
}
