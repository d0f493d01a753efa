/** The jobs on this device: listed, opened, made, copied, renamed, deleted and brought back. */
import type { CoreReply } from '../core/boundary.ts'
import type { Report } from '../core/report.ts'
import demos from '../generated/demos.json'
import { type Head, NO_ANSWER, newest, type Row, rowsOf, stillOpening, within } from './database.ts'
import { isJob, type JobDocument } from './document.ts'
import { headOf } from './heads.ts'
import { job, openFailed, openId, show } from './index.ts'
import { cannotKeep, fresh, hold, keep, keepFailed, onJoined, openLast, recall, rememberOpen, settled, top, unwritten } from './keep.ts'
import { spoken } from './lastwords.ts'
import { askToPersist, jobs, list, listSoon, mark, tidy } from './list.ts'
import { merged, same } from './merge.ts'
import { onWritten, tell, type Written } from './tabs.ts'
import { today } from './today.ts'
import { askAgain, askCore, BOTH, size, workOut } from './work.ts'

export type { Head } from './database.ts'
export { matches } from './heads.ts'
export { jobs, list, persisted, removedJobs, restore } from './list.ts'

onJoined((mine, both) => {
  job.value = merged(mine, job.value, both)
  askAgain()
})
onWritten((written) => void follow(written))

/** Open a job or a demo of this device, as it was left. Returns what is wrong, or nothing. */
export async function open(id: string, ask: () => unknown = workOut): Promise<string | undefined> {
  await settled()
  const found = await recall(id)
  if (!found) {
    const key = id.startsWith('demo:') && id.slice('demo:'.length)
    if (key) return showOriginal(key)
    return 'This job is not on this device any more.'
  }
  const { row, answer, unsaved } = found
  hold(row, answer.report)
  show(id, unsaved ?? row.job, answer)
  if (unsaved) keep({ job: unsaved, step: '' })
  openFailed.value = ''
  void rememberOpen(id)
  ask()
  void trim(row)
  return undefined
}

/** The worked demos, each a file of its own: fetched when shown, and kept for offline use like every file. */
const DEMOS = import.meta.glob<string>('../generated/demos/*.json', { query: '?url', import: 'default', eager: true })

async function original(key: string): Promise<{ job: JobDocument; report: Report }> {
  const answered = await fetch(DEMOS[`../generated/demos/${key}.json`]!)
  if (!answered.ok) throw new Error(`HTTP ${answered.status}`)
  const found = (await answered.json()) as { job: JobDocument; report: Report }
  if (!isJob(found?.job) || !found.report?.ends) throw new Error('it holds no demo')
  return found
}

async function showOriginal(key: string): Promise<string | undefined> {
  try {
    const { job: next, report } = await original(key)
    const id = `demo:${key}`
    hold(fresh(id, next), report)
    show(id, next, { report, good: report.ends })
    if (!stillOpening()) void rememberOpen(id) // else it only stands in
    void workOut()
    openFailed.value = ''
    return undefined
  } catch (error) {
    return notWhole(error as Error)
  }
}

/** Open a demo as it was left. */
export const showDemo = (key: string): Promise<string | undefined> => open(`demo:${key}`)

/** The open demo as it was made; what was changed in it is one undo away. */
export async function resetDemo(): Promise<string | undefined> {
  const found = await original(openId.value.slice('demo:'.length)).catch(notWhole)
  if (typeof found === 'string') return found
  keep({ job: found.job, step: '' })
  job.value = found.job
  void workOut()
  return undefined
}

const notWhole = (error: Error) => `The demo's file did not arrive whole (${error.message}).`

/** What was open last, or the first demo. */
export async function reopen(): Promise<void> {
  const last = (await openLast()) ?? spoken()[0]
  const wrong = last && !(await open(last)) ? undefined : await showDemo(demos[0]!.key)
  if (wrong) openFailed.value = wrong
  const arriving = stillOpening()
  if (arriving) void arriving.then(arrived, () => undefined)
  else void list().then(tidy)
}

/** The database came late: unless something was done meanwhile, the job gives way that stood in for the one last open. */
async function arrived(): Promise<void> {
  keepFailed.value = ''
  await (top.value.rev > 0 || unwritten() ? list() : reopen())
}

/** Another tab has written: take its state of the open job. */
async function follow({ id, rev }: Written): Promise<void> {
  listSoon()
  if (id === openId.value && rev > top.value.rev) await catchUp()
}

/** Take over what other tabs made of the open job; they may have written while this page was frozen. */
export async function catchUp(): Promise<void> {
  await settled()
  const before = top.value
  const row = await within((db) => newest(db, before.id)).catch(() => undefined)
  if (!row || row.rev <= top.value.rev) return
  // An edit that was made meanwhile may have been written before theirs, and then nothing has joined the two. One that cannot
  // be kept now is joined when it can.
  if (unwritten() || top.value !== before) return keepFailed.value ? undefined : catchUp()
  hold(row, null)
  if (same(job.value, row.job)) return
  job.value = row.job
  askAgain()
}

/** Put a new job on this device and open it. */
export async function add(next: JobDocument): Promise<Head> {
  const id = crypto.randomUUID?.() ?? `${Date.now()}-${Math.random()}`
  const row: Row = { ...fresh(id, next), rev: 1, at: Date.now(), step: 'new' }
  const head = headOf(id, next, null)
  await within(async (db) => {
    const going = db.transaction(['rows', 'heads'], 'readwrite')
    await Promise.all([going.objectStore('rows').add(row), going.objectStore('heads').put(head), going.done])
  })
  tell({ id, rev: 0 })
  void askToPersist()
  return head
}

/** Add a job and put it on the page; where this device cannot keep it, it is on the page all the same. */
async function addAndShow(next: JobDocument): Promise<void> {
  await settled()
  const kept = await add(next).catch(cannotKeep)
  // From little data the first answer is a span, never one rate: it waits for its bands.
  const ask = () => size(job.value, BOTH, true)
  if (kept) return void (await open(kept.id, ask))
  const id = `${Date.now()}`
  hold(fresh(id, next), null)
  show(id, next, NO_ANSWER)
  void ask()
}

/** A new job from two answers. Returns what is wrong with them, or nothing. */
export async function start(use: string, rider: string, said: Partial<Pick<JobDocument, 'name' | 'owner'>> = {}): Promise<string | undefined> {
  return made(await askCore({ kind: 'start', use, rider }), (found) => ({ ...found, ...said, date: today() }))
}

/** The open job or another as the bike's next visit: what was built is what is found. Returns what is wrong, or nothing. */
export async function copyAsNextVisit(id: string): Promise<string | undefined> {
  const document = await documentOf(id)
  if (!document) return 'This job is not on this device any more.'
  return made(await askCore({ kind: 'next visit', job: document, date: today() }), (found) => ({ ...found, invented: false }))
}

async function made(reply: CoreReply, finish: (found: JobDocument) => JobDocument): Promise<string | undefined> {
  if (reply.kind === 'failure') return reply.message
  if (reply.kind === 'job') await addAndShow(finish(reply.job))
  return undefined
}

/** A job's document as it stands. */
export async function documentOf(id: string): Promise<JobDocument | undefined> {
  if (id === openId.value) return job.value
  const found = await recall(id)
  return found && (found.unsaved ?? found.row.job)
}

export type Comparison = Extract<CoreReply, { kind: 'comparison' }>['comparison']

/** Two visits side by side, or what stands in the way. */
export async function compare(before: string, after: string): Promise<Comparison | string> {
  const [one, other] = await Promise.all([documentOf(before), documentOf(after)])
  if (!one || !other) return 'One of the two is not on this device any more.'
  const reply = await askCore({ kind: 'compare', before: one, after: other })
  if (reply.kind === 'comparison') return reply.comparison
  return reply.kind === 'failure' ? reply.message : ''
}

/** Say of a job which bike it is, whose and when. Undo takes it back like any edit. */
export async function rename(id: string, said: Partial<Pick<JobDocument, 'name' | 'owner' | 'date'>>): Promise<void> {
  if (id !== openId.value) await open(id)
  const next = { ...job.value, ...said }
  keep({ job: next, step: '' })
  job.value = next
  await settled()
  void workOut()
}

/** Delete a job. It can be brought back for thirty days; the next one takes its place on the page. */
export async function remove(id: string): Promise<void> {
  await settled()
  await mark(id, Date.now())
  if (id !== openId.value) return
  const next = jobs.value[0]
  await (next ? open(next.id) : showDemo(demos[0]!.key))
}

// So many steps are kept of a job.
const KEPT = 200

async function trim({ id }: Row): Promise<void> {
  await within(async (db) => {
    const keys = await db.getAllKeys('rows', rowsOf(id))
    if (keys.length > 1.5 * KEPT) await db.delete('rows', IDBKeyRange.bound(keys[0], keys[keys.length - KEPT]))
  }).catch(() => undefined)
}
