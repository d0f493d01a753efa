/** The job as it stands, written down before anything else can happen: the database takes its time, and a page may be gone sooner. */
import type { JobDocument } from './document.ts'
import type { Slot } from './keep.ts'

const KEY = 'stanchion-unwritten'

export interface Unwritten {
  slot: Slot
  job: JobDocument
}

/** Returns a token by which `forget` knows this very state. Without storage there is none, and the database alone keeps. */
export function writeDown(unwritten: Unwritten): string {
  const text = JSON.stringify(unwritten)
  try {
    localStorage.setItem(KEY, text)
  } catch {
    // Full or forbidden: what the database says of it is shown.
  }
  return text
}

/** The database has this state now; a newer one stays written down. */
export function forget(token: string): void {
  try {
    if (localStorage.getItem(KEY) === token) localStorage.removeItem(KEY)
  } catch {
    // Nothing was written down.
  }
}

/** What the database may not have. */
export function unwritten(): Unwritten | undefined {
  try {
    const text = localStorage.getItem(KEY)
    return text === null ? undefined : (JSON.parse(text) as Unwritten)
  } catch {
    return undefined
  }
}
