/** The browser's own database on this device: what it holds, and a connection that is opened again when it dies. */
import { type DBSchema, type IDBPDatabase, type IDBPTransaction, openDB } from 'idb'
import type { EndReport, Report } from '../core/report.ts'
import { isJob, type JobDocument } from './document.ts'
import { renew, takeOld } from './old.ts'

/** One state of a job. Every edit adds one; the highest `rev` is the job as it stands, those before it are undone to. */
export interface Row {
  id: string
  /** One rising counter of a job, here and in its last words: the newer wins. */
  rev: number
  at: number
  job: JobDocument
  /** What was edited: typing on at one field is one step. */
  step: string
  /** The state that undo goes to; 0 where there is none. */
  back: number
  /** The states that redo goes to, the next one first. */
  redo: number[]
  /** The state that this one is again, where undo or redo made it; else 0. */
  again: number
}

/** What the list of jobs shows of one. */
export interface Head {
  id: string
  at: number
  name: string
  owner: string
  date: string
  use: string
  invented: boolean
  front: EndState
  rear: EndState
  /** The next thing to do, in words; empty where nothing is known. */
  next: string
  /** When it was deleted; 0 while it was not. */
  removed: number
}

/** How far an end is: nothing told yet, an entry refused or no spring on offer, worked out, built. */
export type EndState = 'open' | 'stuck' | 'worked out' | 'built'

/** The last answer to a job, and the last good result of each end, which a refused entry does not take away. */
export interface Answer {
  report: Report | null
  good: { front: EndReport | null; rear: EndReport | null }
}

export interface Schema extends DBSchema {
  rows: { key: [string, number]; value: Row }
  heads: { key: string; value: Head }
  answers: { key: string; value: Answer & { id: string } }
  /** The last words of each job: put blindly at every key, while its row may still wait for the one before it. */
  words: { key: string; value: { id: string; rev: number; job: JobDocument } }
  settings: { key: 'current'; value: string }
}

export type Database = IDBPDatabase<Schema>

const NAME = 'stanchion'
// A browser that will not open a database must not keep the page from opening.
const PATIENCE = 1500

let handle: Database | undefined
let opening: Promise<Database> | undefined
/** Nobody waits any longer for what is being opened; it may come all the same. */
let late = false

function database(): Promise<Database> {
  opening ??= open().finally(() => (late = false))
  opening.catch(forget)
  return late ? Promise.reject(tooLate()) : Promise.race([opening, patience(opening)])
}

/** The database that is still being opened though nobody waits any longer; undefined where none is. */
export const stillOpening = (): Promise<unknown> | undefined => (late ? opening : undefined)

/** The connection where it stands open, so that a write can begin before anything else happens. */
export const atOnce = (): Database | undefined => handle

async function open(): Promise<Database> {
  const db = await openDB<Schema>(NAME, 4, {
    async upgrade(db, from, _to, transaction) {
      if (from >= 2) return renew(transaction)
      db.createObjectStore('rows', { keyPath: ['id', 'rev'] })
      db.createObjectStore('heads', { keyPath: 'id' })
      db.createObjectStore('answers', { keyPath: 'id' })
      db.createObjectStore('words', { keyPath: 'id' })
      if (from === 1) await takeOld(transaction as unknown as IDBPTransaction<unknown, string[], 'versionchange'>)
      else db.createObjectStore('settings')
    },
    // A newer version of the page, in another tab, wants to change what is kept: it must not wait for us.
    blocking: () => forget(),
    terminated: () => forget(),
  })
  db.addEventListener('close', () => forget())
  handle = db
  return db
}

function forget(): void {
  handle?.close()
  handle = undefined
  opening = undefined
  late = false
}

const patience = (attempt: Promise<Database>) =>
  new Promise<never>((_, reject) =>
    setTimeout(() => {
      late = handle === undefined && opening === attempt
      reject(tooLate())
    }, PATIENCE),
  )

const tooLate = () => new Error('the database did not open; close other tabs of this page')

/** Whether an error says that the connection is gone, not that the device refuses. */
export const isDead = (error: unknown): boolean =>
  error instanceof Error && ['InvalidStateError', 'UnknownError', 'NotFoundError'].includes(error.name)

/** Do something with the database; where the connection has died in the background, once more on a new one. */
export async function within<T>(act: (db: Database) => Promise<T>): Promise<T> {
  try {
    return await act(handle ?? (await database()))
  } catch (error) {
    if (!isDead(error)) throw error
    forget()
    return act(await database())
  }
}

/** Every state of one job, in the order of its counter. */
export const rowsOf = (id: string): IDBKeyRange => IDBKeyRange.bound([id, 0], [id, Infinity])

/** The job as it stands: its newest state that can be read. */
export async function newest(db: Database, id: string): Promise<Row | undefined> {
  let cursor = await db.transaction('rows').store.openCursor(rowsOf(id), 'prev')
  while (cursor && !isRow(cursor.value)) cursor = await cursor.continue()
  return cursor?.value
}

/** The same, and rows on top of it that cannot be read make way for the next. */
export async function newestFreed(db: Database, id: string): Promise<Row | undefined> {
  const going = db.transaction('rows', 'readwrite')
  let cursor = await going.store.openCursor(rowsOf(id), 'prev')
  while (cursor && !isRow(cursor.value)) {
    await cursor.delete()
    cursor = await cursor.continue()
  }
  const found = cursor?.value
  await going.done
  return found
}

const isRow = (row: Partial<Row>): row is Row => isJob(row.job) && Array.isArray(row.redo)

export const NO_ANSWER: Answer = { report: null, good: { front: null, rear: null } }

const isEnd = (end: unknown) => end === null || (typeof end === 'object' && 'state' in end!)

/** An answer that can be shown: one kept without its parts is none. */
export function answerOf(found: Partial<Answer> | undefined): Answer {
  const { report = null, good } = found ?? {}
  const ends = report?.ends as Partial<Report['ends']> | undefined
  const whole = isEnd(report && (ends?.front ?? 0)) && isEnd(report && (ends?.rear ?? 0)) && (!report || typeof report.fields === 'object')
  const sound = whole && typeof good === 'object' && good !== null && isEnd(good.front) && isEnd(good.rear)
  return sound ? { report, good } : NO_ANSWER
}
