import { expect, test } from 'vitest'
import { numberText, rateText, told } from './told.ts'

// The right-hand sides are what Python's format() and the core's rate_text give.
test.each([
  [0.5, 0, '0'],
  [1.5, 0, '2'],
  [2.5, 0, '2'],
  [-2.5, 0, '−2'],
  [0.25, 1, '0.2'],
  [0.75, 1, '0.8'],
  [0.35, 1, '0.3'],
  [0.125, 2, '0.12'],
  [0.375, 2, '0.38'],
  [2.675, 2, '2.67'],
  [-0.4, 0, '0'],
  [41.66, 0, '42'],
  [-9.24, 0, '−9'],
])('%d with %d decimals is %s', (value, decimals, text) => {
  expect(numberText(value, decimals)).toBe(text)
})

test.each([
  [4.6, '4.6'],
  [4.25, '4.25'],
  [5, '5.0'],
  [56, '56'],
  [52.5, '52.5'],
])('rate %d is %s', (value, text) => {
  expect(rateText(value)).toBe(text)
})

test('a +/- shows only where one was worked out', () => {
  const figure = { value: 30.4, unit: 'mm', case: '', origin: 'worked out', plus_minus_95: null, decimals: 0 }
  expect(told(figure)).toBe('30 mm')
  expect(told({ ...figure, plus_minus_95: 1.2 })).toBe('30 mm ±1')
  expect(told({ ...figure, plus_minus_95: 0.32 })).toBe('30 mm ±0.3')
  expect(told({ ...figure, value: 56, unit: 'N/mm', decimals: 1, plus_minus_95: 1.68 })).toBe('56.0 N/mm ±2')
  expect(told({ ...figure, value: 7.17, unit: '', decimals: 1 })).toBe('7.2')
})
