import { expect, test } from 'vitest'
import { barsOf, enteredPoints, fit, nameOf, pathsOf, pointOf } from './entered.ts'

const values: Record<string, number> = { 'rear.axle_x': -550, 'rear.axle_z': -60, 'rear.shock_top_x': -180, 'rear.shock_top_z': 330, 'rear.rocker_x': -120 }
const read = (path: string) => values[path] ?? null

test('a point stands once both its coordinates are entered', () => {
  const points = enteredPoints(true, read)
  expect(points.map((point) => point.name)).toEqual(['axle', 'shock top', 'rocker pivot', 'rod on rocker', 'shock on rocker', "rod's other end"])
  expect(points.map((point) => point.at !== null)).toEqual([true, true, false, false, false, false])
  expect(enteredPoints(false, read).map((point) => point.key)).toEqual(['axle', 'shock_top', 'shock_foot'])
})

test('lines join known points only', () => {
  expect(barsOf(enteredPoints(false, read), false)).toEqual([['swingarm pivot', 'axle']])
  expect(barsOf(enteredPoints(false, () => 1), false)).toHaveLength(3)
  expect(barsOf(enteredPoints(true, () => 1), true)).toContainEqual(['swingarm pivot', 'rocker pivot'])
  expect(barsOf(enteredPoints(true, () => 1), false)).toContainEqual(['swingarm pivot', "rod's other end"])
})

test('everything is inside, forward is right, up is up, at one scale', () => {
  const spots = fit(enteredPoints(false, read), 358, 200)
  for (const { x, y } of Object.values(spots)) {
    expect(x).toBeGreaterThanOrEqual(20)
    expect(x).toBeLessThanOrEqual(338)
    expect(y).toBeGreaterThanOrEqual(20)
    expect(y).toBeLessThanOrEqual(180)
  }
  const [pivot, axle, top] = [spots['swingarm pivot']!, spots['axle']!, spots['shock top']!]
  expect(axle.x).toBeLessThan(pivot.x)
  expect(top.y).toBeLessThan(pivot.y)
  expect((pivot.x - axle.x) / 550).toBeCloseTo((pivot.y - top.y) / 330, 6)
})

test('the first point alone does not fill the picture', () => {
  const none = fit(enteredPoints(false, () => null), 358, 200)
  const one = fit(enteredPoints(false, (path) => ({ 'rear.axle_x': -550, 'rear.axle_z': -60 })[path as string] ?? null), 358, 200)
  expect(one['swingarm pivot']).toEqual(none['swingarm pivot'])
})

test('a field tells its point', () => {
  expect(pointOf('rear.rocker_rod_z')).toBe('rocker_rod')
  expect(pointOf('rear.rod_diameter')).toBeNull()
  expect(nameOf('rod')).toBe("rod's other end")
  expect(pathsOf('axle')).toEqual(['rear.axle_x', 'rear.axle_z'])
})
