import { expect, test } from 'vitest'
import type { FieldPath } from '../generated/schema.ts'
import { homeOf, PLAN, rowsOf } from './plan.ts'
import { schema } from './schema.ts'
import { offered } from './units.ts'

const paths = Object.keys(schema.fields) as FieldPath[]
const beside = (path: string) => /\.(tried|built)_/.test(path)

test('every declared field has one home, and nothing else has', () => {
  const homes = Object.values(PLAN).flatMap((plan) => [...(plan.also ?? []), ...plan.folds.flatMap((fold) => fold.fields)])
  const open = Object.values(PLAN).flatMap((plan) => plan.rows.flat().filter((path) => !homes.includes(path)))
  expect([...homes, ...open].toSorted()).toEqual(paths.filter((path) => !beside(path)).toSorted())
  expect(paths.filter((path) => !beside(path) && !homeOf(path))).toEqual([])
})

test('a place shows at most six rows, the first that apply', () => {
  for (const plan of Object.values(PLAN)) expect(plan.most).toBeLessThanOrEqual(6)
  const only = rowsOf('front', (path) => path === 'front.gap_right' || path === 'front.unsprung')
  expect(only).toEqual([['front.gap_right'], ['front.unsprung']])
  expect(rowsOf('front', (path) => path !== 'front.cartridge_state')).toHaveLength(6)
  expect(rowsOf('front', () => true), 'a cartridge brings a fold of its own').toHaveLength(5)
})

test('a field offers the units it would be read in, its own among them', () => {
  for (const path of paths) {
    const field = schema.fields[path]
    if (field.kind === 'quantity' && field.dimension && field.unit) expect(offered(field), path).toContain(field.unit)
  }
  expect(offered(schema.fields['rider.mass'])).toEqual(['kg', 'lb', 'st'])
  expect(offered(schema.fields['front.gap_left'])).not.toContain('km')
})
