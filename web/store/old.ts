/** What version 1 of the database kept: one demo and one job of the user's own, under these two names, each with its answer. */
import type { IDBPTransaction } from 'idb'
import demos from '../generated/demos.json'
import { type Answer, NO_ANSWER } from './database.ts'
import { isJob } from './document.ts'
import { headOf } from './heads.ts'
import { oldWords } from './lastwords.ts'

type Upgrade = IDBPTransaction<unknown, string[], 'versionchange'>

/** Take the old jobs over. What cannot be read stays where it is. */
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
    const before = words?.slot === slot && isJob(words.job) ? 1 : 0
    const row = { id, at: Date.now(), step: 'open', redo: [], again: 0 }
    if (before) await rows.put!({ ...row, rev: 1, job: words!.job, back: 0 })
    await rows.put!({ ...row, rev: 2, job, back: before })
    await transaction.objectStore('answers').put!({ id, report: kept.report ?? null, good: kept.good ?? NO_ANSWER.good })
    await transaction.objectStore('heads').put!(headOf(id, job, kept.report ?? null))
    if (current === slot) await transaction.objectStore('settings').put!(id, 'current')
  }
}
