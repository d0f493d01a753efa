import { expect, test } from 'vitest'
import type { Candidate, Quantity } from '../../core/report.ts'
import { oilLines } from './lines.ts'

const ml = (value: number): Quantity => ({ value, unit: 'ml', case: '', origin: 'worked out', plus_minus_95: null, decimals: 0 })
const lines = (left: number, right: number) =>
  oilLines({ oil: { left: ml(left), right: ml(right) } } as Candidate).map(
    ({ words, figures, plain }) => `${words} ${plain ?? figures.map(({ of, unit }) => `${of.value} ${unit}`).join(' ')}`,
  )

test('both legs in one line where they go the same way', () => {
  expect(lines(42, 45)).toEqual(['add 42 ml left, 45 right'])
  expect(lines(42.3, 41.8)).toEqual(['add 42.3 ml in each leg'])
  expect(lines(-5, -8)).toEqual(['take out 5 ml left, 8 right'])
})

test('a line for each where one takes oil and the other gives some, or nothing', () => {
  expect(lines(3, -2)).toEqual(['add 3 ml left', 'take out 2 ml right'])
  expect(lines(0.2, 4)).toEqual(['and no oil to add left', 'add 4 ml right'])
  expect(lines(0.2, -0.4)).toEqual(['and no oil to add in each leg'])
})

test('a leg whose oil cannot be read has no line', () => {
  expect(oilLines({ oil: null } as Candidate)).toEqual([])
})
