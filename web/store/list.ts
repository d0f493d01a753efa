/** The list of the jobs on this device, and what happens to a whole entry of it: deleted, brought back, lost, kept for good. */
import { computed, signal } from '@preact/signals'
import { type Head, rowsOf, within } from './database.ts'
import { tell } from './tabs.ts'

const heads = signal<Head[]>([])
/** The user's own jobs, the one edited last first. */
export const jobs = computed(() => heads.value.filter(({ id, removed }) => !removed && !id.startsWith('demo:')))
/** What was deleted and can be brought back, the latest first. */
export const removedJobs = computed(() => heads.value.filter(({ removed }) => removed).sort((a, b) => b.removed - a.removed))
/** Whether the browser has promised to keep the jobs; null until it was asked. */
export const persisted = signal<boolean | null>(null)
/** How many jobs were kept here that are gone; 0 where none is missed. */
export const missed = signal(0)

const COUNTED = 'stanchion-jobs'
const FORGOTTEN = 30 * 24 * 3600 * 1000

/** Read the list anew. */
export async function list(): Promise<void> {
  const found = await within((db) => db.getAll('heads')).catch(() => undefined)
  if (!found) return
  heads.value = found.filter(isHead).sort((a, b) => b.at - a.at)
  count()
}

const isHead = (head: Partial<Head>) => typeof head?.id === 'string' && typeof head.name === 'string'

let listing: ReturnType<typeof setTimeout> | undefined
export function listSoon(): void {
  clearTimeout(listing)
  listing = setTimeout(() => void list(), 150)
}

/** A browser short of room throws the database away without a word: the number of jobs, kept beside it, tells. */
function count(): void {
  const here = heads.value.filter(({ id }) => !id.startsWith('demo:')).length
  try {
    const before = Number(localStorage.getItem(COUNTED) ?? 0)
    if (here === 0 && before > 0) missed.value = before
    localStorage.setItem(COUNTED, String(here))
  } catch {
    // Storage is switched off: nobody counted.
  }
}

/** Bring a deleted job back. */
export const restore = (id: string): Promise<void> => mark(id, 0)

/** Say when a job was deleted; 0 takes it back. */
export async function mark(id: string, removed: number): Promise<void> {
  await within(async (db) => {
    const going = db.transaction('heads', 'readwrite')
    const head = await going.store.get(id)
    if (head) await going.store.put({ ...head, removed })
    await going.done
  })
  await list()
  tell({ id, rev: 0 })
}

/** Take away what was deleted long ago. */
export async function tidy(): Promise<void> {
  for (const { id, removed } of removedJobs.value) {
    if (Date.now() - removed < FORGOTTEN) continue
    await within(async (db) => {
      await db.delete('rows', rowsOf(id))
      await Promise.all([db.delete('heads', id), db.delete('answers', id), db.delete('words', id)])
    }).catch(() => undefined)
  }
  persisted.value = (await navigator.storage?.persisted?.().catch(() => null)) ?? null
}

/** After the first job of one's own the browser is asked to keep it for good. */
export async function askToPersist(): Promise<void> {
  if (persisted.value) return
  persisted.value = (await navigator.storage?.persist?.().catch(() => false)) ?? null
}
