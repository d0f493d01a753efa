import { describe, expect, test } from 'vitest'
import { apart, figure, plain, together } from './text.ts'

const MASS = ['kg', 'g', 'lb', 'st']
const RATE = ['N/mm', 'kgf/mm', 'lbf/in', 'N/m']

describe('a typed value', () => {
  test.each([
    ['96.2 kg', MASS, '96.2', 'kg'],
    ['96,2kg', MASS, '96,2', 'kg'],
    ['26.5°', ['rad', '°'], '26.5', '°'],
    ['1,250 m', ['mm', 'm'], '1,250', 'm'],
    ['-5 mm', ['mm', 'm'], '-5', 'mm'],
    // Whatever is not one number and one unit of the list stays as it was typed.
    ['13 st 4 lb', MASS, '13 st 4 lb', ''],
    ['4.4 furlong', RATE, '4.4 furlong', ''],
    ['9**9**9', RATE, '9**9**9', ''],
    ['104', MASS, '104', ''],
  ])('%s is shown in its two places', (text, units, number, unit) => {
    expect(apart(text, units)).toEqual({ number, unit })
  })

  test('what is taken apart and not touched goes together again', () => {
    const { number, unit } = apart('4.6 N/mm', RATE)
    expect(together(number, unit)).toBe('4.6 N/mm')
  })

  test.each(['25 lb/in', 'nan', '9**9**9', '4 4', '4.4.4', '13 st 4 lb'])('%s is given no unit it did not bring', (text) => {
    expect(together(text, 'N/mm')).toBe(text)
  })
})

test('figures have no needless zeros and no negative zero', () => {
  expect([figure(4.6, 2), figure(-0.2, 0), figure(-3, 0), figure(120, 1)]).toEqual(['4.6', '0', '−3', '120'])
  expect([figure(4, 2, 1), figure(4.25, 2, 1), figure(56, 1, 0), plain(4, 1)]).toEqual(['4.0', '4.25', '56', '4.0'])
  expect([plain(0.126), plain(1.4400000001), plain(500), plain(0)]).toEqual(['0.126', '1.44', '500', '0'])
})
