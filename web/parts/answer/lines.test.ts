import { expect, test } from 'vitest'
import type { Candidate, EndOk } from '../../core/report.ts'
import { figure } from '../figure/testing.ts'
import { answerLines, oilLines } from './lines.ts'

const ml = (value: number) => figure(value, 'ml')
const lines = (left: number, right: number) =>
  oilLines({ oil: { left: ml(left), right: ml(right) } } as Candidate).map(
    ({ words, figures, plain }) => `${words} ${plain ?? figures.map(({ of, unit }) => `${of.value} ${unit}`).join(' ')}`,
  )

const sure = { draws: 200, left_out: 0, undecided: 0, counts: [], settled: false, low: 4.3, low_text: '4.3', high: 5, high_text: '5.0', words: '' }
const end = { leave: false, sure, chosen: { rate: figure(4.8, 'N/mm', 1), preload: figure(0), oil: null } } as unknown as EndOk

test('where the readings leave the rate open a span is told, and one rate never alone', () => {
  const [first, second] = answerLines(end)
  expect([first!.words, first!.figures[0]!.of.value, first!.figures[0]!.to, second!.words]).toEqual(['From', 4.3, '5.0', 'at 4.8'])
  const [settled, next] = answerLines({ ...end, sure: { ...sure, settled: true } })
  expect([settled!.words, settled!.figures[0]!.of.value, settled!.figures[0]!.to, next!.words]).toEqual(['Fit', 4.8, undefined, 'with'])
})

test('both legs in one line where they go the same way', () => {
  expect(lines(42, 45)).toEqual(['so add 42 ml left, 45 right'])
  expect(lines(42.3, 41.8)).toEqual(['so add 42.3 ml in each leg'])
  expect(lines(-5, -8)).toEqual(['so take out 5 ml left, 8 right'])
})

test('a line for each where one takes oil and the other gives some, or nothing', () => {
  expect(lines(3, -2)).toEqual(['so add 3 ml left', 'so take out 2 ml right'])
  expect(lines(0.2, 4)).toEqual(['and left leg as it is', 'so add 4 ml right'])
  expect(lines(0.2, -0.4)).toEqual(['and no oil to add'])
})

test('a leg whose oil cannot be read has no line', () => {
  expect(oilLines({ oil: null } as Candidate)).toEqual([])
})

test('an air spring is told by its pressure, then by what is set for the end of the travel', () => {
  const chosen = { pressure: figure(7.1, 'bar'), air_oil: ml(45), second_pressure: null, gap: figure(146), oil: null }
  const air = { leave: false, sure: null, chosen } as unknown as EndOk
  const said = (one: EndOk) => answerLines(one).map(({ words, figures }) => `${words} ${figures.map(({ of, unit }) => `${of.value} ${unit}`).join(' ')}`)
  expect(said(air)).toEqual(['Pump to 7.1 bar', 'add 45 ml in chamber'])
  const legs = { ...air, leave: true, chosen: { ...chosen, air_oil: null, oil: { left: ml(5), right: ml(5) } } } as unknown as EndOk
  expect(said(legs)).toEqual(['Keep 7.1 bar', 'and gap 146 mm', 'so add 5 ml in each leg'])
})

test('an unequal pair is told leg by leg', () => {
  const chosen = { rate: figure(4.5, 'N/mm'), pair: { left: figure(4.4, 'N/mm'), right: figure(4.6, 'N/mm') }, preload: figure(3), oil: null }
  const [first] = answerLines({ leave: false, sure: null, chosen } as unknown as EndOk)
  expect(first!.figures.map(({ of, unit }) => `${of.value} ${unit}`)).toEqual(['4.4 left,', '4.6 N/mm right'])
})
