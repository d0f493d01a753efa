/**
 * The open job on this device: every edit is a row of its own in the database, added while the hand is still on the key. Two
 * tabs cannot overwrite each other: a row says which one it follows, and where another tab was sooner the two are joined.
 */
import { signal } from '@preact/signals'
import type { Report } from '../core/report.ts'
import { type Answer, answerOf, atOnce, type Database, isDead, newest, newestFreed, type Row, rowsOf, within } from './database.ts'
import { EMPTY, type JobDocument } from './document.ts'
import { headOf } from './heads.ts'
import { forget, isWords, type Words, wordsOf, writeDown } from './lastwords.ts'
import { merged, same } from './merge.ts'
import { tell } from './tabs.ts'

/** Why nothing can be kept on this device, where that is so. */
export const keepFailed = signal('')

/** The state that the database is known to hold of the open job; `rev` 0 for a demo that nobody has touched. */
export const top = signal<Row>(fresh('', EMPTY))

interface Edit {
  job: JobDocument
  step: string
  /** Where undo and redo lead from it, when it is one of these itself. */
  leads?: Pick<Row, 'back' | 'redo' | 'again'>
}

/** An edit on its way: the counter that its row will have, and its last words. */
type Going = Edit & { rev: number; words: string }

let waiting: Going[] = []
let going: Promise<void> | undefined
let retry: ReturnType<typeof setTimeout> | undefined
let highest = 0
let known: Report | null = null
/** Called where another tab had a part in the job: what this tab had written, and both together. */
let joined: (mine: JobDocument, both: JobDocument) => void = () => undefined

const RETRY = 5_000
const TYPING = 60_000

export function fresh(id: string, job: JobDocument): Row {
  return { id, rev: 0, at: 0, job, step: '', back: 0, redo: [], again: 0 }
}

/** The row that an undo leads back to when it leaves this one: an undone state stands for the one it repeats. */
export const origin = (row: Row): number => row.again || row.rev

export function onJoined(act: typeof joined): void {
  joined = act
}

/** Put another job's newest row in the hand; what comes next follows it. */
export function hold(row: Row, report: Report | null): void {
  top.value = row
  known = report
  waiting = []
}

/** Everything that was edited has reached the database, or cannot. */
export const settled = (): Promise<void> => going ?? Promise.resolve()

/** Whether an edit has not reached the database yet. */
export const unwritten = (): boolean => going !== undefined || waiting.length > 0

/** Keep an edit of the open job: written down at once, and its row is on the way when this returns. */
export function keep(edit: Edit): void {
  const last = waiting.at(-1)
  const typingOn = last !== undefined && edit.step !== '' && last.step === edit.step && !edit.leads
  if (!unwritten()) highest = Math.max(top.value.rev, 1)
  const rev = typingOn ? last.rev : ++highest
  const words = speak(top.value.id, rev, edit.job)
  if (typingOn) waiting.pop()
  waiting.push({ ...edit, rev, words })
  start()
}

/** Say it in both places. Words stay in the database until the next ones: their counter tells whether a row has overtaken them. */
function speak(id: string, rev: number, job: JobDocument): string {
  try {
    const transaction = atOnce()?.transaction('words', 'readwrite')
    transaction?.store.put({ id, rev, job }).catch(() => undefined)
    transaction?.done.catch(() => undefined)
    transaction?.commit()
  } catch {
    // The connection has died: the row is written on a new one.
  }
  return writeDown(id, { rev, job })
}

function start(): void {
  clearTimeout(retry)
  going ??= drain().finally(() => (going = undefined))
}

/** Rows go one after another, so that an older state never lands on top of a newer one. */
async function drain(): Promise<void> {
  for (let edit = waiting.shift(); edit; edit = waiting.shift()) {
    try {
      await writeOrAgain(edit)
      keepFailed.value = ''
      forget(top.value.id, edit.words)
    } catch (error) {
      keepFailed.value = reason(error)
      waiting.unshift(edit)
      retry = setTimeout(start, RETRY)
      return
    }
  }
}

/** The connection may have died in the background: then once more on a new one. */
function writeOrAgain(edit: Edit): Promise<void> {
  const db = atOnce()
  return db && waiting.length === 0 ? write(db, edit).catch((error: unknown) => again(error, edit)) : within((db) => write(db, edit))
}

function again(error: unknown, edit: Edit): Promise<void> {
  if (!isDead(error)) throw error
  return within((db) => write(db, edit))
}

/** Say why something cannot be kept. */
export function cannotKeep(error: unknown): undefined {
  keepFailed.value = reason(error)
  return undefined
}

function reason(error: unknown): string {
  const { name, message } = error instanceof Error ? error : { name: '', message: String(error) }
  if (name === 'QuotaExceededError') return 'this device has no room left'
  if (name === 'VersionError') return 'a newer version of this page keeps the jobs: reload this tab'
  return message || name
}

/** The row that an edit makes of the one before it. Typing on at one field takes the place of what was typed there. */
function following(row: Row, edit: Edit): { next: Row; instead: number } {
  const base = { id: row.id, rev: row.rev + 1, at: Date.now(), job: edit.job, step: edit.step }
  if (edit.leads) return { next: { ...base, ...edit.leads }, instead: row.again ? row.rev : 0 }
  const typingOn = edit.step !== '' && edit.step === row.step && row.back > 0 && !row.again && Date.now() - row.at < TYPING
  if (typingOn) return { next: { ...base, back: row.back, redo: [], again: 0 }, instead: row.rev }
  return { next: { ...base, back: origin(row), redo: [], again: 0 }, instead: row.again ? row.rev : 0 }
}

/** Add a row and commit in one breath: no answer is waited for, so that a page which dies now has said it all. */
async function write(db: Database, edit: Edit): Promise<void> {
  const before = top.value
  const { id } = before
  const base = before.rev === 0 ? { ...before, rev: 1, at: Date.now() } : before
  const { next, instead } = following(base, edit)
  const transaction = db.transaction(['rows', 'heads'], 'readwrite')
  const rows = transaction.objectStore('rows')
  const asked = [
    ...(before.rev === 0 ? [rows.add(base)] : []),
    rows.add(next),
    ...(instead ? [rows.delete([id, instead])] : []),
    transaction.objectStore('heads').put(headOf(id, edit.job, known)),
  ]
  const newestKey = rows.openKeyCursor(rowsOf(id), 'prev')
  const all = Promise.allSettled([...asked, newestKey])
  try {
    transaction.commit()
    await transaction.done
  } catch (error) {
    await all
    if (!(error instanceof Error) || (error.name !== 'ConstraintError' && error.name !== 'AbortError')) throw error
    const first = (await all).find((one) => one.status === 'rejected')?.reason as Error | undefined
    if (first?.name !== 'ConstraintError') throw first ?? error
    return join(db, before, edit, 0)
  }
  if ((await newestKey)!.primaryKey[1] > next.rev) return join(db, before, edit, next.rev)
  top.value = next
  tell({ id, rev: next.rev })
}

/** Another tab was sooner, or a row that cannot be read lies in the way: join the two edits on top of the newest that can. */
async function join(db: Database, base: Row, { job, step }: Edit, lost: number): Promise<void> {
  if (lost) await db.delete('rows', [base.id, lost])
  const theirs = (await newestFreed(db, base.id)) ?? base
  const both = merged(base.job, job, theirs.job)
  top.value = theirs
  waiting = waiting.map((later) => ({ ...later, job: merged(job, later.job, both) }))
  joined(job, both)
  if (!same(both, theirs.job)) await write(db, { job: both, step })
  highest = top.value.rev + waiting.length
}

/** Keep the answer to the open job. An answer is worked out again when it is lost. */
export function keepAnswer(answer: Answer, job: JobDocument): void {
  const { id, rev } = top.value
  known = answer.report
  // A demo that nobody has touched is no job on this device.
  if (rev === 0 && !unwritten()) return
  void within(async (db) => {
    const going = db.transaction(['answers', 'heads'], 'readwrite')
    const head = await going.objectStore('heads').get(id)
    const now = { ...headOf(id, job, answer.report), removed: head?.removed ?? 0, at: head?.at ?? Date.now() }
    await Promise.all([going.objectStore('answers').put({ id, ...answer }), going.objectStore('heads').put(now), going.done])
    tell({ id, rev: 0 })
  }).catch(() => undefined)
}

/** A job as it was kept: its newest row, over which stand last words that never reached the database. */
export async function recall(id: string): Promise<{ row: Row; answer: Answer; unsaved: JobDocument | undefined } | undefined> {
  const words = wordsOf(id)
  try {
    return await within(async (db) => {
      const [row, answer, said] = await Promise.all([newest(db, id), db.get('answers', id), db.get('words', id)])
      const last = isWords(said) && said.rev > (words?.rev ?? 0) ? said : words
      const newer = last && last.rev > (row?.rev ?? 0) ? last.job : undefined
      if (!row && !newer) return undefined
      return { row: row ?? before(id, last!), answer: answerOf(answer), unsaved: newer }
    })
  } catch (error) {
    keepFailed.value = reason(error)
    return words && { row: before(id, words), answer: answerOf(undefined), unsaved: words.job }
  }
}

/** The row that last words follow, where it cannot be read. Should the database hold a newer one after all, that one stands. */
const before = (id: string, words: Words): Row => ({ ...fresh(id, words.job), rev: words.rev - 1 })

/** Make known which job is open, for the next start. */
export async function rememberOpen(id: string): Promise<void> {
  try {
    sessionStorage.setItem('stanchion-open', id)
  } catch {
    // The database remembers it for all tabs.
  }
  await within((db) => db.put('settings', id, 'current')).catch(() => undefined)
}

export async function openLast(): Promise<string | undefined> {
  try {
    const own = sessionStorage.getItem('stanchion-open')
    if (own) return own
  } catch {
    // As above.
  }
  try {
    const found = await within((db) => db.get('settings', 'current'))
    return typeof found === 'string' ? found : undefined
  } catch (error) {
    keepFailed.value = reason(error)
    return undefined
  }
}
