import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import type { JobDocument } from './document.ts'
import { forget, unwritten, writeDown } from './lastwords.ts'

const job = (name: string): JobDocument => ({ format: 'stanchion-job', version: 1, name, date: '', invented: false, note: '' })

beforeEach(() => {
  const kept = new Map<string, string>()
  vi.stubGlobal('localStorage', {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, value: string) => kept.set(key, value),
    removeItem: (key: string) => kept.delete(key),
  })
})
afterEach(() => vi.unstubAllGlobals())

test('what is written down stays until that very state has reached the database', () => {
  const first = writeDown({ slot: 'own', job: job('one') })
  const second = writeDown({ slot: 'own', job: job('two') })
  forget(first)
  expect(unwritten()).toEqual({ slot: 'own', job: job('two') })
  forget(second)
  expect(unwritten()).toBeUndefined()
})

test('a browser that forbids storage, or holds something else there, gives nothing and breaks nothing', () => {
  const forbidden = () => {
    throw new Error('forbidden')
  }
  vi.stubGlobal('localStorage', { getItem: forbidden, setItem: forbidden, removeItem: forbidden })
  forget(writeDown({ slot: 'own', job: job('one') }))
  expect(unwritten()).toBeUndefined()
  vi.stubGlobal('localStorage', { getItem: () => 'not JSON' })
  expect(unwritten()).toBeUndefined()
})
