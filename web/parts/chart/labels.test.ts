import { expect, test } from 'vitest'
import { inOneRow, inRows, spread, type Wish } from './labels.ts'

const wish = (key: string, at: number, width: number): Wish => ({ key, text: key, at, width })

test('labels that have room share the row next to the edge', () => {
  expect(inRows([wish('slow', 50, 40), wish('fast', 200, 40)], 0, 300).map((one) => one.row)).toEqual([0, 0])
})

function overlap(low: number, width: number, other: number, otherWidth: number): boolean {
  return low < other + otherWidth && other < low + width
}

test.each([
  [[wish('fast', 290, 70), wish('slow', 220, 70), wish('end', 280, 160), wish('found', 225, 100)]],
  [[wish('a', 100, 80), wish('b', 101, 80), wish('c', 102, 80), wish('d', 103, 80), wish('e', 104, 80)]],
  [[wish('a', 2, 60), wish('b', 298, 60), wish('c', 150, 290)]],
])('no label lies on another, all lie inside and over their points', (wishes) => {
  const placed = inRows(wishes, 0, 300)
  for (const one of placed) {
    expect(one.left).toBeGreaterThanOrEqual(0)
    expect(one.left + one.width).toBeLessThanOrEqual(300)
    expect(overlap(one.left, one.width + 5, one.at, 0.01)).toBe(true)
    for (const other of placed) {
      if (one !== other && one.row === other.row) expect(overlap(one.left, one.width, other.left, other.width)).toBe(false)
    }
  }
})

test('a label keeps off the leader of the one above it', () => {
  const [low, high] = inRows([wish('slow', 220, 70), wish('end', 250, 160)], 0, 300)
  expect([low!.row, high!.row]).toEqual([0, 1])
  expect(low!.left + low!.width).toBeLessThan(high!.at)
})

test('points that nearly meet have leaders clear of each other\'s labels', () => {
  const [low, high] = inRows([wish('tried', 250, 80), wish('end', 251, 160)], 0, 300)
  expect(low!.left + low!.width).toBeLessThan(high!.at)
})

test('positions are spread no further than they need', () => {
  expect(spread([10, 100], 20, 0, 200)).toEqual([10, 100])
  expect(spread([100, 98], 20, 0, 200)).toEqual([118, 98])
  expect(spread([195, 199, 190], 20, 0, 200)).toEqual([180, 200, 160])
})

test('labels that fit share one row in the order of their points', () => {
  const placed = inOneRow([wish('sudden', 350, 80), wish('settled', 340, 90), wish('found', 345, 60)], 100, 358)!
  expect(placed.map((one) => one.key)).toEqual(['settled', 'found', 'sudden'])
  for (const [i, one] of placed.entries()) {
    expect(one.left).toBeGreaterThanOrEqual(i === 0 ? 100 : placed[i - 1]!.left + placed[i - 1]!.width + 10)
    expect(one.left + one.width).toBeLessThanOrEqual(358)
  }
  expect(inOneRow([wish('a', 10, 200), wish('b', 20, 200)], 0, 300)).toBeNull()
  expect(inOneRow([wish('alone', 50, 40)], 0, 300)![0]!.left).toBe(30)
})
