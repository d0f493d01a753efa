import { expect, test } from 'vitest'
import type { Curve } from '../../core/report.ts'
import { between, curvePath, geometry, rubberPath } from './geometry.ts'

const curve = (last: number, more: Partial<Curve> = {}): Curve => ({
  axis: '',
  unit: 'mm',
  force_unit: 'kN',
  stroke: [0, 150, 300],
  springs: [0, 1, 2],
  slow: [0, 1.4, last - 1],
  working: [0, 1.5, last],
  fast: [0, 1.6, last + 0.2],
  rubber: null,
  wheel_rate: [10, 12, 20],
  ...more,
})
const frame = { left: 40, right: 240, top: 20, bottom: 152 }

test('stroke runs up at the scale of its frame, force to the right', () => {
  const place = geometry([curve(5)], frame, false)
  expect(place.at(0, 0)).toEqual([40, 152])
  expect(place.at(300, 0)[1]).toBe(20)
  expect(place.at(150, 5.2 * 1.04)).toEqual([240, 86])
})

test('turned, stroke runs along the bottom', () => {
  const place = geometry([curve(5)], frame, true)
  expect(place.at(0, 0)).toEqual([40, 152])
  expect(place.at(300, 0)).toEqual([240, 152])
})

test('one scale holds all curves, what is wanted, and what pulls in', () => {
  expect(geometry([curve(5), curve(7)], frame, false).forceScale.domain[1]).toBeCloseTo(7.2 * 1.04)
  expect(geometry([curve(5)], frame, false, 9).forceScale.domain[1]).toBeCloseTo(9 * 1.04)
  expect(geometry([curve(5, { working: [-0.4, 1.5, 5] })], frame, false).forceScale.domain[0]).toBe(-0.4)
})

test('a bump rubber is drawn from its first touch until it leaves the plot, and does not rule the scale', () => {
  const soft = curve(5, { rubber: [0, 1.5, 6] })
  expect(geometry([soft], frame, false).forceScale.domain[1]).toBeCloseTo(6 * 1.04)
  expect(rubberPath(geometry([soft], frame, false), soft)).toMatch(/^M.+L.+/)
  const hard = curve(5, { rubber: [0, 1.5, 40] })
  const place = geometry([hard], frame, false)
  expect(place.forceScale.domain[1]).toBeCloseTo(5.2 * 1.25 * 1.04)
  expect(Number(rubberPath(place, hard)!.split('L').at(-1)!.split(',')[0])).toBeCloseTo(240, 1)
  expect(rubberPath(place, curve(5))).toBeNull()
})

test('values between points lie on straight lines and stay inside', () => {
  expect(between([0, 10, 20], [1, 2, 6], 15)).toBe(4)
  expect(between([0, 10, 20], [1, 2, 6], -5)).toBe(1)
  expect(between([0, 10, 20], [1, 2, 6], 99)).toBe(6)
})

test('a curve has a point for every stroke', () => {
  expect(curvePath(geometry([curve(5)], frame, false), curve(5), 'working').split('L')).toHaveLength(3)
})
