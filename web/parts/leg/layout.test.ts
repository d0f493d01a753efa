import { expect, test } from 'vitest'
import { at, coilPath, level, lying, partAt, read, scaleOf, tall, upright } from './layout.ts'
import { leg, section } from './testing.ts'

const long = { ...leg, parts: leg.parts.map((part) => ({ ...part, top: part.top * 2, bottom: part.bottom * 2 })) }
const short = { ...leg, parts: leg.parts.map((part) => ({ ...part, top: part.top / 3, bottom: part.bottom / 3 })) }

test('every leg is drawn about as tall, the usual one at .44 px a mm on a phone and .56 at a desk', () => {
  expect(scaleOf(leg, false)).toBeCloseTo((0.44 * 968) / 960, 6)
  expect(scaleOf(leg, true)).toBeCloseTo((0.56 * 968) / 960, 6)
  expect(scaleOf(long, false)).toBeCloseTo(scaleOf(leg, false) / 2, 6)
  expect(scaleOf(short, false)).toBe(0.9)
})

test('lengths are at one scale, widths at twice it', () => {
  const place = upright(leg, false, 30)
  expect(place.y(0)).toBe(30)
  expect(place.y(500) - place.y(200)).toBeCloseTo(300 * place.scale, 9)
  expect(2 * place.half(48)).toBeCloseTo(2 * 48 * place.scale, 9)
})

test('the column holds the leg and its dimension', () => {
  const place = upright(leg, false, 30)
  expect(place.dimension).toBeGreaterThan(12)
  for (const part of leg.parts) {
    expect(place.centre - place.half(part.outside)).toBeGreaterThan(place.dimension)
    expect(place.centre + place.half(part.outside)).toBeLessThan(place.right)
  }
})

test('lying, the leg fills the width from cap to lug', () => {
  const place = lying(leg, 358)
  const { over, foot } = tall(leg)
  expect(place.y(-over)).toBeCloseTo(0, 6)
  expect(place.y(foot)).toBeCloseTo(358 - 16, 6)
})

test('what moves goes up by the stroke, the rest stays', () => {
  const [outer, inner] = leg.parts
  expect(at(outer!, 150)).toEqual({ top: 0, bottom: 590 })
  expect(at(inner!, 150)).toEqual({ top: 190, bottom: 750 })
})

test('lists are read between their strokes and held at their ends', () => {
  expect(level(section, leg, 75)).toBe(340)
  expect(read(section, leg.gas_force as number[], 225)).toBe(625)
  expect(read(section, leg.gas_force as number[], 400)).toBe(1100)
})

test('coils fill the spring, each from left to right', () => {
  const lines = coilPath(100, 200, 50, 10, 25).split('M').slice(1)
  expect(lines).toHaveLength(25)
  const ys = lines.flatMap((line) => line.split('L').map((point) => Number(point.split(' ')[1])))
  expect(Math.min(...ys)).toBeGreaterThanOrEqual(100)
  expect(Math.max(...ys)).toBeLessThanOrEqual(200)
  expect(lines.every((line) => line.startsWith('40 ') && line.includes('L60 '))).toBe(true)
})

test.each([
  ['cap', 0, 0],
  ['gap', 60, -35],
  ['springs', 200, 10],
  ['oil', 330, 21],
  ['cartridge', 600, 5],
  ['leg', 770, 10],
  ['leg', 300, 40],
])('tapped is the %s', (name, depth, off) => {
  expect(partAt(section, leg, 150, depth, off)).toBe(name)
})

test('the same place is another part at another stroke', () => {
  expect(partAt(section, leg, 0, 450, 10)).toBe('springs')
  expect(partAt(section, leg, 300, 450, 10)).toBe('cartridge')
})
