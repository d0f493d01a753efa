import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import type { CoreReply, CoreRequest } from '../core/boundary.ts'
import type { Core } from '../core/client.ts'
import { connect, type } from './actions.ts'
import { ahead, job, report, reports } from './index.ts'

vi.mock('./keep.ts', () => ({ keep: vi.fn(async () => undefined), recall: vi.fn(async () => undefined) }))

const FIGURES = { setup: { rate: { value: 4.6 } }, travel: 300, windows: {} }
const END = { state: 'ok', answer: '', problems: [], elsewhere: [], chosen: { rate: { value: 4.6 } } }

/** What the core was asked, shortly: "figures front", "size front+rear", "size front ±"; and of which job. */
let asked: string[]
let of: unknown[]
let answers: ((reply: CoreReply) => void)[]

const told = (request: CoreRequest) =>
  request.kind === 'figures' ? `figures ${request.end}` : request.kind === 'size' ? `size ${request.ends.join('+')}${request.bands ? ' ±' : ''}` : request.kind

const core = {
  ask: (request: CoreRequest) => {
    asked.push(told(request))
    of.push('job' in request && request.job)
    return new Promise<CoreReply>((resolve) => answers.push(resolve))
  },
} as unknown as Core

/** Answer what was asked last, and let the page go on from it. */
async function answer(): Promise<void> {
  const last = asked.at(-1)!
  const ends = last.includes('+') ? ['front', 'rear'] : [last.split(' ')[1]!]
  const reply = last.startsWith('figures')
    ? { kind: 'figures', figures: FIGURES }
    : ends.length === 1
      ? { kind: 'part', report: { fields: {}, axle: ends[0], end: END } }
      : { kind: 'report', report: { fields: {}, ends: { front: END, rear: END } } }
  answers.at(-1)!(reply as unknown as CoreReply)
  await vi.advanceTimersByTimeAsync(1)
}

beforeEach(() => {
  vi.useFakeTimers()
  asked = []
  of = []
  answers = []
  report.value = null
  for (const end of ['front', 'rear'] as const) reports[end].value = { report: null, stale: 'no', problems: [] }
  job.value = { format: 'stanchion-job', version: 1, name: '', date: '', invented: false, note: '' }
  connect(core)
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
