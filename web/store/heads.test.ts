import { expect, test } from 'vitest'
import type { Report } from '../core/report.ts'
import { EMPTY } from './document.ts'
import { headOf } from './heads.ts'

const due = (left: number, words: string) => ({ due: { value: 50 }, left: { value: left }, words })
const next = (service: unknown, measure: string[] = []) =>
  headOf('a', EMPTY, { ends: {}, measure_first: measure.map((words) => ({ words })), service } as unknown as Report).next

test('an overdue service comes before a reading, one that is due only after all readings', () => {
  const overdue = { ends: [due(8, 'Fork: in 8 h.'), due(-2, 'Shock: 2 h overdue.')] }
  const ahead = { ends: [{ due: null, left: null, words: 'Fork: nobody entered' }, due(8, 'Shock: in 8 h.')] }
  expect(next(overdue, ['Weigh it.'])).toBe('Shock: 2 h overdue.')
  expect(next(ahead, ['Weigh it.'])).toBe('Weigh it.')
  expect(next(ahead)).toBe('Shock: in 8 h.')
  expect(next(null)).toBe('')
  expect(next(undefined, ['Weigh it.'])).toBe('Weigh it.')
})
