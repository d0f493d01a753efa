import { type Signal, signal } from '@preact/signals'
import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import type { CoreReply, CoreRequest } from '../core/boundary.ts'
import type { Core } from '../core/client.ts'
import { amend, tick, type } from './actions.ts'
import { EMPTY, entryAt } from './document.ts'
import { ahead, job, report, reports } from './index.ts'
import { keep, keepAnswer } from './keep.ts'
import { askAgain, connect } from './work.ts'

vi.mock('./keep.ts', () => ({ keep: vi.fn(), keepAnswer: vi.fn() }))

const FIGURES = { setup: { rate: { value: 4.6 } }, travel: 300, windows: {} }
const END = { state: 'ok', answer: '', problems: [], conditions: [], chosen: { rate: { value: 4.6 } } }

/** What the core was asked, shortly: "figures front", "size front+rear", "size front ±"; and of which job. */
let asked: string[]
let of: unknown[]
let answers: ((reply: CoreReply) => void)[]
let rejections: ((error: Error) => void)[]

const inWords = (request: CoreRequest) =>
  request.kind === 'figures' ? `figures ${request.end}` : request.kind === 'size' ? `size ${request.ends.join('+')}${request.bands ? ' ±' : ''}` : request.kind

type At = 'ready' | 'loading' | 'failed'
let state: Signal<{ at: At }>
let lost: Signal<number>

const ask = {
  ask: (request: CoreRequest) => {
    asked.push(inWords(request))
    of.push('job' in request && request.job)
    return new Promise<CoreReply>((resolve, reject) => {
      answers.push(resolve)
      rejections.push(reject)
    })
  },
}

/** Answer what was asked last, and let the page go on from it. */
async function answer(): Promise<void> {
  const last = asked.at(-1)!
  const ends = last.includes('+') ? ['front', 'rear'] : [last.split(' ')[1]!]
  const reply = last.startsWith('figures')
    ? { kind: 'figures', figures: FIGURES }
    : ends.length === 1
      ? { kind: 'part', report: { fields: {}, damping: [], axle: ends[0], end: END } }
      : { kind: 'report', report: { fields: {}, damping: [], ends: { front: END, rear: END } } }
  answers.at(-1)!(reply as unknown as CoreReply)
  await vi.advanceTimersByTimeAsync(1)
}

beforeEach(() => {
  vi.useFakeTimers()
  asked = []
  of = []
  answers = []
  rejections = []
  vi.mocked(keepAnswer).mockClear()
  report.value = null
  for (const end of ['front', 'rear'] as const) {
    reports[end].value = { report: null, stale: 'no', problems: [] }
    ahead[end].value = null
  }
  job.value = EMPTY
  state = signal({ at: 'ready' })
  lost = signal(0)
  connect({ ...ask, state, lost } as unknown as Core)
})
afterEach(() => vi.useRealTimers())

test('an edit asks for the figures of its end, then for both ends, and for their bands once the hand rests', async () => {
  type('rear.travel', '305 mm', 'measured')
  expect(asked).toEqual(['figures rear'])
  await answer()
  expect(ahead.rear.value).toEqual(FIGURES)
  expect(asked).toEqual(['figures rear', 'size front+rear'])
  await answer()
  expect(ahead.rear.value).toBeNull()
  expect(reports.rear.value.report).toEqual(END)
  expect(asked).toHaveLength(2)
  await vi.advanceTimersByTimeAsync(1000)
  expect(asked.slice(2)).toEqual(['size rear ±'])
  await answer()
  expect(asked.slice(2)).toEqual(['size rear ±', 'size front+rear ±'])
  await answer()
  await vi.advanceTimersByTimeAsync(5000)
  expect(asked).toHaveLength(4)
})

test('an edit that is overtaken asks for nothing more, and the one that overtook it for all', async () => {
  type('front.travel', '300 mm', 'measured')
  type('front.travel', '305 mm', 'measured')
  expect(asked).toEqual(['figures front'])
  await answer()
  expect(ahead.front.value).toBeNull()
  await answer()
  expect(ahead.front.value).toEqual(FIGURES)
  expect(asked).toEqual(['figures front', 'figures front', 'size front+rear'])
  expect(of.slice(1)).toEqual([job.value, job.value])
})

/** Reject what was asked last, as a core does whose worker is gone. */
async function lose(): Promise<void> {
  rejections.at(-1)!(new Error('gone'))
  await vi.advanceTimersByTimeAsync(1)
}

/** Answer all that an edit asks: figures, both ends, and their bands once the hand rests. */
const settle = async () => {
  await answer()
  await answer()
  await vi.advanceTimersByTimeAsync(1_000)
  await answer()
  await answer()
  expect(reports.front.value).toMatchObject({ report: END, stale: 'no' })
}

test('an answer to a job that has changed since is not taken for its answer', async () => {
  type('front.travel', '300 mm', 'measured')
  await answer()
  expect(asked.at(-1)).toBe('size front+rear')
  // The job changes while its report is on the way, by no edit that would ask again.
  const before = report.value
  job.value = { ...job.value, name: 'another' }
  await answer()
  expect(report.value).toBe(before)
  expect(reports.front.value.report).toBeNull()
  expect(keepAnswer).not.toHaveBeenCalled()
})

test('figures of a job that has changed since are not shown', async () => {
  type('front.travel', '300 mm', 'measured')
  job.value = { ...job.value, name: 'another' }
  await answer()
  expect(ahead.front.value).toBeNull()
})

test('an answer that died with its worker is marked at once and asked again when the core is ready', async () => {
  type('front.travel', '300 mm', 'measured')
  await settle()
  expect(reports.front.value.stale).toBe('no')
  type('front.travel', '305 mm', 'measured')
  lost.value += 1
  state.value = { at: 'loading' }
  await lose()
  await lose()
  expect(reports.front.value.stale).toBe('saved')
  const before = asked.length
  state.value = { at: 'ready' }
  expect(asked.slice(before)).toEqual(['figures front'])
  await answer()
  expect([asked.at(-1), of.at(-1)]).toEqual(['size front+rear', job.value])
  await answer()
  await vi.advanceTimersByTimeAsync(1_000)
  await answer()
  // What has been worked out again stands as current, and stays so.
  expect(reports.front.value.stale).toBe('no')
})

test('after a failure "try again" asks again', async () => {
  type('front.travel', '300 mm', 'measured')
  await settle()
  state.value = { at: 'failed' }
  state.value = { at: 'loading' }
  const before = asked.length
  state.value = { at: 'ready' }
  expect(asked.slice(before)).toEqual(['figures front'])
})

test('an answer that does not come is marked as not current while it is waited for', async () => {
  type('front.travel', '300 mm', 'measured')
  await settle()
  type('front.travel', '305 mm', 'measured')
  expect(reports.front.value.stale).toBe('no')
  await vi.advanceTimersByTimeAsync(700)
  expect(reports.front.value.stale).toBe('saved')
})

test('what wakes from being frozen is marked and asked again', async () => {
  type('front.travel', '300 mm', 'measured')
  await settle()
  const before = asked.length
  askAgain()
  expect(reports.front.value.stale).toBe('saved')
  expect(asked.slice(before)).toEqual(['figures front'])
})

test('an empty +/- or note is taken away, not kept as empty', () => {
  type('front.travel', '300 mm', 'measured')
  amend('front.travel', { plus_minus_95: '2 mm', note: 'tape' })
  expect(entryAt(job.value, 'front.travel')).toEqual({ value: '300 mm', origin: 'measured', plus_minus_95: '2 mm', note: 'tape' })
  amend('front.travel', { plus_minus_95: '' })
  expect(entryAt(job.value, 'front.travel')).toEqual({ value: '300 mm', origin: 'measured', note: 'tape' })
  amend('front.travel', { note: '' })
  expect(Object.keys(entryAt(job.value, 'front.travel')!)).toEqual(['value', 'origin'])
})

test('a check is ticked with its day, a step of undo each, and taken back; what else the work holds stays', () => {
  vi.setSystemTime(new Date('2026-11-29T12:00:00'))
  job.value = { ...EMPTY, work: { note: 'by R.', ticks: { gap: '2026-11-28' } } }
  tick('caps', true)
  expect(job.value.work).toEqual({ note: 'by R.', ticks: { gap: '2026-11-28', caps: '2026-11-29' } })
  expect(keep).toHaveBeenLastCalledWith({ job: job.value, step: '' })
  tick('gap', false)
  expect(job.value.work).toEqual({ note: 'by R.', ticks: { caps: '2026-11-29' } })
  expect(asked.at(-1)).toBe('figures front')
})

test('a job in which nothing was ticked yet takes its first tick', () => {
  job.value = EMPTY
  tick('easy', true)
  expect(Object.keys(job.value.work!.ticks!)).toEqual(['easy'])
})
