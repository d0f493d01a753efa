import { expect, test } from 'vitest'
import { figure } from '../figure/testing.ts'
import { apart, layout, middle } from './layout.ts'

const quantity = figure(0)
const view = (rise: number) => ({
  at: 'hanging',
  travel: quantity,
  shock_length: quantity,
  bars: [],
  points: { 'swingarm pivot': [0, 0], axle: [-550, -130 + rise], 'shock top': [-74, 313] } as Record<string, [number, number]>,
})

test('all views stand inside the drawing, at one scale both ways', () => {
  const placed = layout([view(0), view(150), view(300)], 358, 120)
  const spots = placed.views.flatMap((points) => Object.values(points))
  expect(Math.min(...spots.map((spot) => spot.x))).toBeGreaterThanOrEqual(120)
  expect(Math.max(...spots.map((spot) => spot.x))).toBeLessThanOrEqual(358)
  expect(Math.max(...spots.map((spot) => spot.y))).toBeLessThan(placed.height)
  const [first, , last] = placed.views
  const across = (first!['swingarm pivot']!.x - first!.axle!.x) / 550
  expect((first!.axle!.y - last!.axle!.y) / 300).toBeCloseTo(across)
})

test('what is further forward is further right and what is higher is higher', () => {
  const [points] = layout([view(0)], 400, 100).views
  expect(points!.axle!.x).toBeLessThan(points!['shock top']!.x)
  expect(points!['shock top']!.y).toBeLessThan(points!.axle!.y)
})

test.each([[[10, 12, 14]], [[0, 100, 200]], [[50, 50, 50]], [[90, 10, 12]]])('labels stand a line apart and keep their order', (wished) => {
  const placed = apart(wished)
  const order = wished.map((_, index) => index).sort((a, b) => wished[a]! - wished[b]!)
  for (let k = 1; k < order.length; k++) expect(placed[order[k]!]! - placed[order[k - 1]!]!).toBeGreaterThan(15)
})

test('the middle of two spots', () => {
  expect(middle({ x: 0, y: 2 }, { x: 4, y: 4 })).toEqual({ x: 2, y: 3 })
})
