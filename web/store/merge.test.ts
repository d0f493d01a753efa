import { expect, test } from 'vitest'
import { EMPTY } from './document.ts'
import { merged } from './merge.ts'

const base = { ...EMPTY, name: 'A', rider: { mass: { value: '80 kg' }, posture: 'sitting' }, front: { rate: '4.2' } }

test('each entry comes from whoever changed it; an entry is never half of each', () => {
  const mine = { ...base, rider: { ...base.rider, mass: { value: '82 kg', note: 'scale' } }, front: {} }
  const theirs = { ...base, name: 'B', rider: { mass: { value: '80 kg', note: 'theirs' }, posture: 'standing' }, rear: { rate: '95' } }
  expect(merged(base, mine, theirs)).toEqual({ ...base, name: 'B', rider: { mass: { value: '82 kg', note: 'scale' }, posture: 'standing' }, front: {}, rear: { rate: '95' } })
})

test('a +/- or a note of one tab is not put to the value of the other', () => {
  const mine = { ...base, rider: { ...base.rider, mass: { value: '82 kg' } } }
  const theirs = { ...base, rider: { ...base.rider, mass: { value: '80 kg', plus_minus_95: '3 kg' } } }
  expect(merged(base, mine, theirs).rider!.mass).toEqual({ value: '82 kg' })
})

test('what nobody changed stays, what either took away is gone, what one alone did stands', () => {
  expect(merged(base, base, base)).toEqual(base)
  const without = { ...base, rider: { posture: 'sitting' } }
  expect(merged(base, without, base)).toEqual(without)
  expect(merged(base, base, without)).toEqual(without)
})

test('checks ticked in two tabs are all ticked; one taken back in either is gone', () => {
  const once = { ...base, work: { ticks: { caps: '2026-11-29' } } }
  const mine = { ...base, work: { ticks: { caps: '2026-11-29', gap: '2026-11-29' } } }
  const theirs = { ...base, work: { ticks: { bled: '2026-11-29' } } }
  expect(merged(once, mine, theirs).work).toEqual({ ticks: { gap: '2026-11-29', bled: '2026-11-29' } })
  expect(merged(base, mine, { ...base, work: { ticks: { easy: '2026-11-30' } } }).work!.ticks).toEqual({ caps: '2026-11-29', gap: '2026-11-29', easy: '2026-11-30' })
})
