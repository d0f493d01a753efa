/** Stand-ins for what a browser gives, for the tests of the store. */
import { vi } from 'vitest'

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
