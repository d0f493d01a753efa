import { expect, test } from 'vitest'
import { figure } from './testing.ts'
import { bare, numberText, size, withUnit } from './text.ts'

// The right-hand sides are what Python's format() gives.
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

test('a result is shown as the core rounded it, with its unit and its +/- where it has one', () => {
  expect(withUnit(figure(30.4))).toBe('30 mm')
  expect(withUnit(figure(30.4, 'mm', 0, '±0.3'))).toBe('30 mm ±0.3')
  expect(withUnit(figure(7.17, '', 1))).toBe('7.2')
})

test('a size has no sign, in its text either, and what is bare has no band', () => {
  const taken = { ...figure(-8, 'ml', 0, '±2'), text: '−8' }
  expect(withUnit(size(taken))).toBe('8 ml ±2')
  expect(withUnit(bare(taken))).toBe('−8 ml')
})
