import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import { EMPTY } from './document.ts'
import { forget, oldWords, spoken, wordsOf, writeDown } from './lastwords.ts'
import { stubStorage } from './testing.ts'

const job = (name: string) => ({ ...EMPTY, name })

beforeEach(() => stubStorage())
afterEach(() => vi.unstubAllGlobals())

test('what is written down stays until that very state has reached the database', () => {
  const first = writeDown('a', { rev: 1, job: job('one') })
  const second = writeDown('a', { rev: 2, job: job('two') })
  writeDown('b', { rev: 7, job: job('other') })
  forget('a', first)
  expect(wordsOf('a')).toEqual({ rev: 2, job: job('two') })
  forget('a', second)
  expect(wordsOf('a')).toBeUndefined()
  expect(spoken()).toEqual(['b'])
})

test.each(['null', '5', '"x"', '[]', '{}', '{"rev":1}', '{"rev":1,"job":null}', '{"rev":1,"job":{}}', '{"rev":"1","job":{"format":"stanchion-job"}}', 'not JSON'])(
  'last words that are none (%s) are passed over',
  (text) => {
    localStorage.setItem('stanchion-words:a', text)
    localStorage.setItem('stanchion-unwritten', text)
    expect(wordsOf('a')).toBeUndefined()
    expect(oldWords()).toBeUndefined()
  },
)

test('a browser that forbids storage gives nothing and breaks nothing', () => {
  const forbidden = () => {
    throw new Error('forbidden')
  }
  vi.stubGlobal('localStorage', { getItem: forbidden, setItem: forbidden, removeItem: forbidden })
  forget('a', writeDown('a', { rev: 1, job: job('one') }))
  expect(wordsOf('a')).toBeUndefined()
  expect(spoken()).toEqual([])
})
