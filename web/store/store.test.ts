import { beforeEach, describe, expect, test } from 'vitest'
import type { EndReport, Figures, PartReport, Report } from '../core/report.ts'
import { entryAt, type JobDocument, textAt, typed, withEntry } from './document.ts'
import { ahead, dampingOld, follow, heard, heardFigures, heardPart, report, reports, statesOld } from './index.ts'

const EMPTY: JobDocument = { format: 'stanchion-job', version: 1, name: '', date: '', invented: false, note: '' }
const ok = (answer: string) => ({ state: 'ok', answer, problems: [], conditions: [], chosen: { rate: { value: 4.6 } } }) as unknown as EndReport
const refused = (path: string) => ({ state: 'refused', problems: [{ path }] }) as unknown as EndReport
const said = (front: EndReport, rear: EndReport) => ({ ends: { front, rear }, fields: {}, damping: [] }) as unknown as Report

describe('the job document', () => {
  test('keeps entries as typed, leaves the others and the old document alone', () => {
    const one = withEntry(EMPTY, 'rider.mass', { value: '104 kg', origin: 'measured' })
    const two = withEntry(one, 'rider.posture', { value: 'standing' })
    expect(textAt(two, 'rider.mass')).toBe('104 kg')
    expect(textAt(withEntry(two, 'rider.mass', undefined), 'rider.mass')).toBe('')
    expect(textAt(withEntry(two, 'rider.mass', undefined), 'rider.posture')).toBe('standing')
    expect(EMPTY).not.toHaveProperty('rider')
  })

  test('reads the short form of a job file, and null as nothing', () => {
    const short = { ...EMPTY, rider: { mass: 80, posture: null, front_axle: { value: null, note: 'later' } } }
    expect(entryAt(short, 'rider.mass')).toEqual({ value: 80, origin: 'stated' })
    expect(entryAt(short, 'rider.posture')).toBeUndefined()
    expect(entryAt(short, 'rider.front_axle')).toBeUndefined()
  })

  test('a value typed over an assumption takes neither its origin nor its +/-, but keeps the note', () => {
    const assumed = { value: '16 kg', plus_minus_95: '1.5 kg', origin: 'assumed', note: 'cast wheel' } as const
    expect(typed(assumed, '15 kg', 'measured')).toEqual({ value: '15 kg', origin: 'measured', note: 'cast wheel' })
    expect(typed({ ...assumed, origin: 'stated' }, '15 kg', 'measured')).toEqual({ ...assumed, origin: 'stated', value: '15 kg' })
  })
})

describe('what the core says', () => {
  beforeEach(() => {
    report.value = null
    for (const end of ['front', 'rear'] as const) {
      reports[end].value = { report: null, stale: 'no', problems: [] }
      ahead[end].value = null
    }
  })

  test('a refused end keeps its last good result, marked; the other end goes on', () => {
    heard(said(ok('one'), ok('two')), true)
    heard(said(refused('front.rate'), ok('three')), true)
    expect(reports.front.value).toMatchObject({ report: { answer: 'one' }, stale: 'last good', problems: [{ path: 'front.rate' }] })
    expect(reports.rear.value).toMatchObject({ report: { answer: 'three' }, stale: 'no' })
    heard(said(ok('four'), ok('three')), true)
    expect(reports.front.value).toMatchObject({ report: { answer: 'four' }, stale: 'no', problems: [] })
  })

  test('damping stands, marked, until the bands bring it anew end by end', () => {
    const of = (...told: [string, string][]) => ({ ...said(ok('one'), ok('two')), damping: told.map(([axle, log]) => ({ axle, log })) }) as unknown as Report
    const part = (log: string) => ({ axle: 'rear', end: ok('two'), fields: {}, damping: [{ axle: 'rear', log }] }) as unknown as PartReport
    const logs = () => Object.fromEntries(report.value!.damping.map(({ axle, log }) => [axle, log]))
    heard(of(['front', 'first'], ['rear', 'first']), true)
    expect([logs(), dampingOld.value]).toEqual([{ front: 'first', rear: 'first' }, []])
    heard(of(), false)
    expect([logs(), dampingOld.value]).toEqual([{ front: 'first', rear: 'first' }, ['front', 'rear']])
    heardPart(part('second'), true)
    expect([logs(), dampingOld.value]).toEqual([{ front: 'first', rear: 'second' }, ['front']])
    heard(of(['front', 'second'], ['rear', 'second']), true)
    expect([logs(), dampingOld.value]).toEqual([{ front: 'second', rear: 'second' }, []])
  })

  test('the states of a fork stand, marked, until the bands bring the new ones; another kind of fork has none', () => {
    const of = (states: string | null, kind = 'sealed cartridge') =>
      ({ ...said(ok('one'), ok('two')), fields: { 'front.air': { value: kind } }, states: states && { note: states } }) as unknown as Report
    heard(of('first'), true)
    heard(of(null), false)
    expect(report.value?.states).toEqual({ note: 'first' })
    expect(statesOld.value).toBe(true)
    heard(of('second'), true)
    expect(report.value?.states).toEqual({ note: 'second' })
    expect(statesOld.value).toBe(false)
    heard(of(null, 'open'), false)
    expect(report.value?.states).toBeNull()
  })

  test('figures stand ahead of their report until it comes; none where it already says the same', () => {
    const figures = (value: number) => ({ setup: { rate: { value } }, travel: 300 }) as unknown as Figures
    heard(said(ok('one'), ok('two')), true)
    heardFigures('front', figures(4.8))
    expect(ahead.front.value).toEqual(figures(4.8))
    expect(reports.front.value.report).toMatchObject({ answer: 'one' })
    heardFigures('front', figures(4.6))
    expect(ahead.front.value).toBeNull()
    heardFigures('front', figures(4.8))
    heardFigures('front', null)
    expect(ahead.front.value).toBeNull()
    heardFigures('front', figures(4.8))
    heardFigures('rear', figures(48))
    heardPart({ fields: {}, damping: [], axle: 'front', end: ok('three') } as unknown as PartReport, false)
    expect([ahead.front.value, ahead.rear.value]).toEqual([null, figures(48)])
    // What is no longer true is not "the same": the figures say that it is again.
    heard(said(refused('front.rate'), ok('two')), true)
    heardFigures('front', figures(4.6))
    expect(ahead.front.value).toEqual(figures(4.6))
  })

  test('without a good result there is none to keep', () => {
    expect(follow({ report: null, stale: 'no', problems: [] }, refused('front.rate'), true)).toMatchObject({ report: null, stale: 'no' })
  })

  test('an end that says nothing new keeps its bands in sight until the new ones are there', () => {
    const of = (value: number, band: number | null) =>
      ({ state: 'ok', problems: [], conditions: [], answer: '', chosen: { rate: { value, plus_minus_95: band } } }) as unknown as EndReport
    const view = follow({ report: null, stale: 'no', problems: [] }, of(4.6, 0.1), true)
    expect(follow(view, of(4.6, null), false)).toMatchObject({ report: of(4.6, 0.1), stale: 'no' })
    expect(follow({ ...view, stale: 'saved' }, of(4.6, null), false)).toMatchObject({ stale: 'saved' })
    expect(follow({ ...view, stale: 'last good' }, of(4.6, null), false)).toMatchObject({ stale: 'no' })
    expect(follow(view, of(4.6, 0.2), true)).toMatchObject({ report: of(4.6, 0.2) })
    // Another answer is shown at once; the bands of the old one are not its own.
    expect(follow(view, of(4.8, null), false)).toMatchObject({ report: of(4.8, null) })
  })

  test('whom the spring holds for stays in sight while its bands are worked out, but not another spring', () => {
    const of = (rate: number, words: string | null) =>
      ({ state: 'ok', problems: [], conditions: [], chosen: { rate: { value: rate } }, holds_for: words && { words } }) as unknown as EndReport
    const view = follow({ report: null, stale: 'no', problems: [] }, { ...of(4.6, '99 to 106 kg'), why: ['one'] } as EndReport, true)
    expect(follow(view, of(4.6, null), false)).toMatchObject({ report: { holds_for: { words: '99 to 106 kg' } } })
    expect(follow(view, of(4.8, null), false)).toMatchObject({ report: { holds_for: null } })
    expect(follow(view, of(4.6, null), true)).toMatchObject({ report: { holds_for: null } })
    expect(follow(view, of(4.6, '98 to 105 kg'), true)).toMatchObject({ report: { holds_for: { words: '98 to 105 kg' } } })
  })

  test('an answer for one end leaves the other, and what compares the two, in sight', () => {
    heard({ ...said(ok('one'), ok('two')), attitude: { words: 'level' } } as unknown as Report, true)
    heardPart({ fields: {}, damping: [], axle: 'front', end: ok('three') } as unknown as PartReport, true)
    expect(reports.front.value.report).toMatchObject({ answer: 'three' })
    expect(reports.rear.value.report).toMatchObject({ answer: 'two' })
    expect(report.value).toMatchObject({ attitude: { words: 'level' }, ends: { front: { answer: 'three' }, rear: { answer: 'two' } } })
  })

  test('what compares the ends keeps its bands too where they say nothing new', () => {
    const of = (front: string, words: string) => ({ ...said(ok(front), ok('two')), attitude: { words } }) as unknown as Report
    heard(of('one', '3 ±2 mm higher'), true)
    heard(of('one', '3 mm higher'), false)
    expect(report.value!.attitude).toEqual({ words: '3 ±2 mm higher' })
    heard({ ...of('one', '4 mm higher'), ends: { ...of('one', '').ends, rear: { ...ok('two'), chosen: { rate: { value: 9 } } } as unknown as EndReport } }, false)
    expect(report.value!.attitude).toEqual({ words: '4 mm higher' })
    heard(of('one', '4 ±1 mm higher'), true)
    expect(report.value!.attitude).toEqual({ words: '4 ±1 mm higher' })
  })

  test('a field of which the same is said keeps its identity, another does not', () => {
    const fields = (mass: number) => ({ 'rider.mass': { value: mass }, 'bike.rake': { value: 26 } })
    const of = (mass: number) => ({ ...said(ok('one'), ok('two')), fields: fields(mass) }) as unknown as Report
    heard(of(80), true)
    const before = report.value!.fields
    heard(of(90), true)
    expect(report.value!.fields['bike.rake']).toBe(before['bike.rake'])
    expect(report.value!.fields['rider.mass']).not.toBe(before['rider.mass'])
    expect(report.value!.fields['rider.mass']).toMatchObject({ value: 90 })
  })
})
