import { expect, test } from 'vitest'
import type { EndReport, Quantity, SagTold, Setup } from '../../core/report.ts'
import { figure as figureOf } from '../figure/testing.ts'
import { cardRows, sharedCase } from './rows.ts'

test('two cases are told once where they agree and apart where they differ', () => {
  expect(sharedCase('bike alone, gas settled, along the leg', 'bike alone, gas settled, vertical at the axle')).toEqual({
    shared: 'bike alone, gas settled',
    front: 'along the leg',
    rear: 'vertical at the axle',
  })
  expect(sharedCase('per leg', 'per shock')).toEqual({ shared: '', front: 'per leg', rear: 'per shock' })
})

const figure = (value: number, unit: string) => figureOf(value, unit, 1)
const NAMES = ['preload', 'free_sag', 'rider_sag', 'frequency', 'end_force', 'end_multiple']
const setup = (rate: number, more: object = {}) =>
  ({ rate: figure(rate, 'N/mm'), ...Object.fromEntries(NAMES.map((name) => [name, figure(1, 'mm')])), gap: figure(120, 'mm'), ...more }) as object
const report = (found: object) => ({ state: 'ok', problems: [], as_found: { problem: null, setup: found } }) as unknown as EndReport
const rows = (chosen: object, found: object) => cardRows('front', report(found), () => 'measured', { setup: chosen as Setup, built: false, head: 'draft' }, [])

test('a fork on air alone prints how its air is set and no coil; one with a coil prints both', () => {
  const air = { pressure: figure(7.5, 'bar'), second_pressure: figure(11, 'bar'), air_oil: figure(20, 'ml') }
  const alone = rows(setup(0, air), setup(0, { pressure: figure(9, 'bar'), second_pressure: figure(10, 'bar'), air_oil: null }))
  expect(alone.slice(0, 4).map((row) => row.name)).toEqual(['Air pressure', 'Second volume', 'Oil or spacers', 'Gap'])
  expect(alone[0]).toMatchObject({ found: [{ text: '9.0', origin: 'measured' }], left: [{ text: '7.5', origin: null }] })
  expect(alone[2]).toMatchObject({ found: [], left: [{ text: '20.0' }] })
  const kept = rows(setup(0, { ...air, second_pressure: null }), setup(0, { pressure: figure(9, 'bar'), second_pressure: { ...figure(10, 'bar'), case: 'second volume, cold' } }))
  expect(kept[1]).toMatchObject({ name: 'Second volume', case: 'cold', found: [{ text: '10.0', origin: 'measured' }], left: [{ text: '10.0', origin: 'measured' }] })
  expect(rows(setup(1, air), setup(1, air)).map((row) => row.name)).toContain('Spring rate')
  expect(rows(setup(4.6), setup(4.2)).map((row) => row.name)).not.toContain('Air pressure')
})

test('what was built stands leg by leg over the lines of where it came from; a draft has none', () => {
  const gaps = [figure(124, 'mm'), figure(122, 'mm')] as unknown as [Quantity, Quantity]
  const built = cardRows('front', report(setup(4.2)), () => 'measured', { setup: setup(4.8) as Setup, built: true, head: 'as left', gaps }, [])
  expect(built.find((row) => row.name === 'Gap')!.left.map(({ text, origin }) => `${text} ${origin}`)).toEqual(['124.0 measured', '122.0 measured'])
  expect(built[0]).toMatchObject({ name: 'Spring rate', left: [{ text: '4.8', origin: 'measured' }] })
  expect(rows(setup(4.8), setup(4.2))[0]).toMatchObject({ left: [{ text: '4.8', origin: null }] })
})

test('a sag that was read stands in the column of its setup, with its line, and says where it was left out', () => {
  const read = (of: SagTold['of'], label: string, value: number, left_out = ''): SagTold => ({ axle: 'front', label, of, word: 'read', found: figureOf(value, 'mm', 0, '±1'), origin: 'measured', left_out })
  const column = (of: SagTold['of'], built: boolean) => {
    const told = [read(of, 'free sag', 30), read(of, 'rider sag', 74, 'left out: read again'), { ...read(of, 'free sag', 9), axle: 'rear' as const }]
    const made = cardRows('front', report(setup(4.2)), () => null, { setup: setup(4.8) as Setup, built, head: built ? 'as left' : 'draft' }, told)
    return ['Free sag', 'Rider sag'].map((name) => made.find((row) => row.name === name)!)
  }
  const [free, rider] = column('found', false)
  expect(free!.found).toEqual([{ text: '30', band: '±1', origin: 'measured', word: 'read', note: '' }])
  expect(rider!.found).toEqual([{ text: '74', band: '±1', origin: 'measured', word: 'read', note: 'left out: read again' }])
  expect([free!.left, rider!.left]).toMatchObject([[{ text: '1.0', origin: null }], [{ text: '1.0', origin: null }]])
  expect(column('built', true)[1]).toMatchObject({ found: [{ text: '1.0', origin: null }], left: [{ text: '74', word: 'read' }] })
  expect(column('built', false)[1]!.left).toMatchObject([{ text: '1.0', origin: null }])
})
