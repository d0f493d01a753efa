/** What older versions of the database kept, taken over when it is opened. */
import type { IDBPTransaction, StoreNames } from 'idb'
import demos from '../generated/demos.json'
import { type Answer, NO_ANSWER, type Schema } from './database.ts'
import { asNow, isJob } from './document.ts'
import { headOf } from './heads.ts'
import { oldWords } from './lastwords.ts'

type Upgrade = IDBPTransaction<unknown, string[], 'versionchange'>

/** Versions 2 and 3 kept every job as it was written then: each state and last word of one is written as it is now. */
export async function renew(transaction: IDBPTransaction<Schema, StoreNames<Schema>[], 'versionchange'>): Promise<void> {
  for (const name of ['rows', 'words'] as const) {
    for (let at = await transaction.objectStore(name).openCursor(); at; at = await at.continue())
      if (isJob(at.value.job)) await at.update({ ...at.value, job: asNow(at.value.job) } as never)
  }
}

/** Version 1 kept one demo and one job of the user's own, under these two names. What cannot be read stays where it is. */
export async function takeOld(transaction: Upgrade): Promise<void> {
  const words = oldWords()
  const current = (await transaction.objectStore('settings').get('current')) as unknown
  for (const slot of ['demo', 'own'] as const) {
    const kept = (await transaction.objectStore('jobs').get(slot)) as (Partial<Answer> & { job?: unknown }) | undefined
    if (!isJob(kept?.job)) continue
    const { job } = kept
    const id = slot === 'own' ? 'first-own' : `demo:${(demos.find(({ name }) => name === job.name) ?? demos[0]!).key}`
    const rows = transaction.objectStore('rows')
    // Which of the two was newer nobody wrote down: the words stand one undo away.
    const before = words?.slot === slot && isJob(words.job) ? asNow(words.job) : undefined
    const row = { id, at: Date.now(), step: 'open', redo: [], again: 0 }
    if (before) await rows.put!({ ...row, rev: 1, job: before, back: 0 })
    await rows.put!({ ...row, rev: 2, job: asNow(job), back: before ? 1 : 0 })
    await transaction.objectStore('answers').put!({ id, report: kept.report ?? null, good: kept.good ?? NO_ANSWER.good })
    await transaction.objectStore('heads').put!(headOf(id, job, kept.report ?? null))
    if (current === slot) await transaction.objectStore('settings').put!(id, 'current')
  }
}
