/** Stand-ins for what a browser gives, for the tests of the store. */
import { vi } from 'vitest'
import type { CoreReply } from '../core/boundary.ts'
import type { Core } from '../core/client.ts'
import type { Row } from './database.ts'
import { EMPTY, type JobDocument } from './document.ts'

/** A storage of its own, whose keys are its own properties as in a browser. */
export function stubStorage(): Map<string, string> {
  const kept = new Map<string, string>()
  const storage = new Proxy(
    {
      getItem: (key: string) => kept.get(key) ?? null,
      setItem: (key: string, value: string) => void kept.set(key, value),
      removeItem: (key: string) => void kept.delete(key),
    },
    {
      ownKeys: () => [...kept.keys()],
      getOwnPropertyDescriptor: (target, key) => (kept.has(String(key)) ? { enumerable: true, configurable: true, value: '' } : Reflect.getOwnPropertyDescriptor(target, key)),
    },
  )
  vi.stubGlobal('localStorage', storage)
  return kept
}

/** What one tab of the page holds: its modules, loaded apart from those of any other. */
export async function openTab() {
  vi.resetModules()
  const [keep, index, jobs, list, history, actions, work, database] = await Promise.all([
    import('./keep.ts'),
    import('./index.ts'),
    import('./jobs.ts'),
    import('./list.ts'),
    import('./history.ts'),
    import('./actions.ts'),
    import('./work.ts'),
    import('./database.ts'),
  ])
  return { keep, index, jobs, list, history, actions, work, database }
}

export type Tab = Awaited<ReturnType<typeof openTab>>

export const JOB: JobDocument = { ...EMPTY, name: 'A', rider: { mass: '80 kg' } }

const silent = { state: { value: { at: 'ready' } }, lost: { value: 0 }, ask: () => new Promise<CoreReply>(() => undefined) } as unknown as Core

/** A tab whose core says nothing. */
export async function tab(): Promise<Tab> {
  const made = await openTab()
  made.work.connect(silent)
  await made.database.within(async () => undefined)
  return made
}

/** A tab that has a job of its own open. */
export async function tabOn(id?: string): Promise<{ one: Tab; id: string }> {
  const one = await tab()
  const opened = id ?? (await one.jobs.add(JOB)).id
  await one.jobs.open(opened)
  return { one, id: opened }
}

export async function rows(one: Tab, id: string): Promise<Row[]> {
  return one.database.within((db) => db.getAll('rows', one.database.rowsOf(id)))
}
