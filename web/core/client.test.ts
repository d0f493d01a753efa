import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import type { FromWorker, ToWorker } from './boundary.ts'
import { type Core, startCore } from './client.ts'
import type { Running } from './early.ts'

vi.mock('./early.ts', () => ({ early: undefined, run: () => undefined }))

/** A worker whose side is played by the test. */
class FakeWorker {
  onmessage: ((event: { data: FromWorker }) => void) | undefined
  asked: ToWorker[] = []
  ended = false
  postMessage(message: ToWorker) {
    this.asked.push(message)
  }
  terminate() {
    this.ended = true
  }
  say(data: FromWorker) {
    this.onmessage!({ data })
  }
}

let workers: FakeWorker[]
let core: Core
const JOB = { kind: 'size', job: {}, bands: false, ends: ['front', 'rear'] } as const
const newest = () => workers.at(-1)!

function start(): Running {
  workers.push(new FakeWorker())
  return { worker: newest() as unknown as Worker, heard: [] }
}

beforeEach(() => {
  vi.useFakeTimers()
  vi.stubGlobal('location', new URL('http://page.test/'))
  vi.stubGlobal('isSecureContext', true)
  vi.stubGlobal('document', { documentElement: { dataset: {} } })
  workers = []
  core = startCore(start(), start)
})
afterEach(() => {
  vi.useRealTimers()
  vi.unstubAllGlobals()
})

test('a question asked early is answered once the core is ready, one at a time', async () => {
  const first = core.ask(JOB)
  const second = core.ask({ kind: 'start', use: 'enduro', rider: '104 kg' })
  expect(newest().asked).toEqual([])
  newest().say({ type: 'ready' })
  expect(newest().asked).toEqual([{ id: 1, text: JSON.stringify(JOB) }])
  newest().say({ type: 'answer', id: 1, text: '{"kind":"report","report":{"a":1}}' })
  expect(await first).toEqual({ kind: 'report', report: { a: 1 } })
  newest().say({ type: 'answer', id: 2, text: '{"kind":"failure","message":"rider: no"}' })
  expect(await second).toEqual({ kind: 'failure', message: 'rider: no' })
})

test('silence while starting ends in a failure that has words and a report', () => {
  newest().say({ type: 'progress', step: 'fetching', done: 1, total: 9 })
  vi.advanceTimersByTime(24_000)
  expect(core.state.value.at).toBe('loading')
  vi.advanceTimersByTime(2_000)
  expect(core.state.value).toMatchObject({ at: 'failed', reason: 'stalled', wayOut: expect.stringContaining('Try again') })
  expect(core.state.value).toHaveProperty('report', expect.stringContaining('1 of 9'))
})

test('news keeps a slow start alive, and a late one is taken', () => {
  for (let done = 0; done < 20; done += 1) {
    vi.advanceTimersByTime(20_000)
    newest().say({ type: 'progress', step: 'fetching', done, total: 20 })
  }
  expect(core.state.value.at).toBe('loading')
  vi.advanceTimersByTime(30_000)
  expect(core.state.value.at).toBe('failed')
  newest().say({ type: 'ready' })
  expect(core.state.value.at).toBe('ready')
})

test('a named failure rejects what was asked and what is asked after', async () => {
  const before = core.ask(JOB)
  newest().say({ type: 'failed', reason: 'missing-file', file: 'core.pack.wasm', detail: 'HTTP 404' })
  await expect(before).rejects.toMatchObject({ why: 'failed' })
  await expect(core.ask(JOB)).rejects.toThrow('core.pack.wasm')
})

test('an answer that takes too long costs its worker, and the next question is answered by a new one', async () => {
  newest().say({ type: 'ready' })
  const slow = core.ask(JOB, 1_000)
  const next = core.ask(JOB)
  const failed = expect(slow).rejects.toMatchObject({ why: 'too-slow' })
  vi.advanceTimersByTime(1_001)
  await failed
  expect(workers.map((worker) => worker.ended)).toEqual([true, false])
  expect(core.state.value.at).toBe('loading')
  newest().say({ type: 'ready' })
  newest().say({ type: 'answer', id: 2, text: '{"kind":"report","report":{}}' })
  expect(await next).toMatchObject({ kind: 'report' })
})

test('two lost answers in a row end in a failure, not in a third start; the user may try again', async () => {
  const lost = [core.ask(JOB), core.ask(JOB)].map((reply) => expect(reply).rejects.toMatchObject({ why: 'broke' }))
  for (const id of [1, 2]) {
    newest().say({ type: 'ready' })
    newest().say({ type: 'broken', id, detail: 'out of memory' })
  }
  await Promise.all(lost)
  expect(core.state.value).toMatchObject({ at: 'failed', reason: 'stuck' })
  expect(workers).toHaveLength(2)
  core.restart()
  expect(core.state.value.at).toBe('loading')
  expect(workers).toHaveLength(3)
})

test('a question that costs its worker each time ends in a failure, whatever else is answered in between', async () => {
  const lost: Promise<void>[] = []
  for (const _ of [1, 2]) {
    newest().say({ type: 'ready' })
    const easy = core.ask({ kind: 'figures', job: {}, end: 'front' })
    newest().say({ type: 'answer', id: newest().asked.at(-1)!.id, text: '{"kind":"figures","figures":null}' })
    await easy
    lost.push(expect(core.ask(JOB)).rejects.toMatchObject({ why: 'broke' }))
    newest().say({ type: 'broken', id: newest().asked.at(-1)!.id, detail: 'out of memory' })
  }
  await Promise.all(lost)
  expect(core.state.value).toMatchObject({ at: 'failed', reason: 'stuck' })
  expect(core.lost.value).toBe(2)
})
