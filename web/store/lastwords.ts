/**
 * A job as it stands, written down before anything else can happen: the database takes its time, and a page may be gone sooner.
 * It carries the job's own counter, so that words which the database has since overtaken are not believed.
 */
import { asNow, isJob, type JobDocument } from './document.ts'

/** Version 1 kept one, without a counter. */
const OLD = 'stanchion-unwritten'
const KEY = 'stanchion-words:'

export interface Words {
  rev: number
  job: JobDocument
}

/** Returns a token by which `forget` knows this very state. Without storage there is none, and the database alone keeps. */
export function writeDown(id: string, words: Words): string {
  const text = JSON.stringify(words)
  try {
    localStorage.setItem(KEY + id, text)
  } catch {
    // Full or forbidden: what the database says of it is shown.
  }
  return text
}

/** The database has this state now; a newer one stays written down. */
export function forget(id: string, token: string): void {
  try {
    if (localStorage.getItem(KEY + id) === token) localStorage.removeItem(KEY + id)
  } catch {
    // Nothing was written down.
  }
}

/** What the database may not have of a job. */
export function wordsOf(id: string): Words | undefined {
  const found = read(KEY + id)
  return isWords(found) ? { ...found, job: asNow(found.job) } : undefined
}

export function isWords(found: unknown): found is Words {
  const { rev, job } = (typeof found === 'object' && found !== null ? found : {}) as Partial<Words>
  return Number.isSafeInteger(rev) && isJob(job)
}

/** Whose last words there are. */
export function spoken(): string[] {
  try {
    return Object.keys(localStorage).filter((key) => key.startsWith(KEY)).map((key) => key.slice(KEY.length))
  } catch {
    return []
  }
}

/** The words of version 1, taken once. */
export function oldWords(): { slot: string; job: unknown } | undefined {
  const found = read(OLD) as { slot?: unknown; job?: unknown } | null
  try {
    localStorage.removeItem(OLD)
  } catch {
    // There were none.
  }
  return found && typeof found === 'object' && typeof found.slot === 'string' ? { slot: found.slot, job: found.job } : undefined
}

function read(key: string): unknown {
  try {
    return JSON.parse(localStorage.getItem(key) ?? 'null')
  } catch {
    return null
  }
}
