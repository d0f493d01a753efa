/** Undo and redo of the open job. They stand in its rows on this device, so they outlive a reload; each is kept as a row itself. */
import { computed } from '@preact/signals'
import { type Row, within } from './database.ts'
import { job } from './index.ts'
import { keep, origin, settled, top } from './keep.ts'
import { workOut } from './work.ts'

export const canUndo = computed(() => top.value.back > 0)
export const canRedo = computed(() => top.value.redo.length > 0)

/** One step back. What was undone waits for redo until something else is edited. */
export async function undo(): Promise<void> {
  await settled()
  const { back, redo } = top.value
  await goTo(back, (row) => ({ back: row.back, redo: [origin(top.value), ...redo], again: row.rev }))
}

/** One step forth again. */
export async function redo(): Promise<void> {
  await settled()
  const [next, ...later] = top.value.redo
  if (next !== undefined) await goTo(next, (row) => ({ back: row.back, redo: later, again: row.rev }))
}

async function goTo(rev: number, leads: (row: Row) => Pick<Row, 'back' | 'redo' | 'again'>): Promise<void> {
  const { id } = top.value
  const row = rev > 0 ? await within((db) => db.get('rows', [id, rev])) : undefined
  // Older than what is kept: here the way back ends.
  if (!row) top.value = { ...top.value, back: 0 }
  if (!row || top.value.id !== id) return
  keep({ job: row.job, step: '', leads: leads(row) })
  job.value = row.job
  await settled()
  void workOut()
}
