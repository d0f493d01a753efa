import 'fake-indexeddb/auto'
import { IDBFactory } from 'fake-indexeddb'
import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import type { CoreReply } from '../core/boundary.ts'
import type { Core } from '../core/client.ts'
import { asNow, EMPTY, type JobDocument } from './document.ts'
import { openTab, stubStorage } from './testing.ts'

const JOB: JobDocument = { ...EMPTY, name: 'A', rider: { mass: '80 kg' } }
const OLD = { ...JOB, version: 2, elsewhere: { hot_temperature: { value: '70', origin: 'stated' } } }
const HOT = { conditions: { hot_temperature: { value: '70' } } }
let words: Map<string, string>

const silent = { state: { value: { at: 'ready' } }, lost: { value: 0 }, ask: () => new Promise<CoreReply>(() => undefined) } as unknown as Core

async function tab() {
  const made = await openTab()
  made.work.connect(silent)
  return made
}

/** A database of before, as another page left it; it stays open until it is closed. */
function before(version: number, fill: (db: IDBDatabase, stores: IDBTransaction) => void): Promise<IDBDatabase> {
  return new Promise((done) => {
    const opening = indexedDB.open('stanchion', version)
    opening.onupgradeneeded = () => fill(opening.result, opening.transaction!)
    opening.onsuccess = () => done(opening.result)
  })
}

/** As version 2 or 3 of the database kept one job of the user's own, two states of it. */
const keptAs = (version: 2 | 3) =>
  before(version, (db) => {
    const row = { id: 'x', at: 1, step: '', redo: [], again: 0 }
    const rows = db.createObjectStore('rows', { keyPath: ['id', 'rev'] })
    rows.put({ ...row, rev: 1, back: 0, job: { ...OLD, name: 'first' } })
    rows.put({ ...row, rev: 2, back: 1, job: OLD })
    rows.put({ id: 'x', rev: 3 })
    const heads = db.createObjectStore('heads', { keyPath: 'id' })
    heads.put({ id: 'x', name: 'A', owner: '', date: '', use: '', at: 1, invented: false, front: 'open', rear: 'open', next: '', removed: 0 })
    db.createObjectStore('answers', { keyPath: 'id' })
    db.createObjectStore('words', { keyPath: 'id' })
    db.createObjectStore('settings').put('x', 'current')
  })

beforeEach(() => {
  vi.stubGlobal('indexedDB', new IDBFactory())
  vi.stubGlobal('BroadcastChannel', undefined)
  words = stubStorage()
})
afterEach(async () => {
  await new Promise((done) => setTimeout(done, 200))
  vi.unstubAllGlobals()
})

test('what version 1 kept is taken over; words of unknown age stand one undo away', async () => {
  const old = { job: { ...JOB, version: 1 }, report: null, good: { front: null, rear: null } }
  const db = await before(1, (made, stores) => {
    made.createObjectStore('jobs').put(old, 'own')
    made.createObjectStore('settings').put('own', 'current')
    stores.objectStore('jobs').put({ broken: true }, 'demo')
  })
  db.close()
  words.set('stanchion-unwritten', JSON.stringify({ slot: 'own', job: { ...JOB, name: 'words' } }))
  const one = await tab()
  await one.jobs.open((await one.keep.openLast())!)
  expect(one.index.job.value.name).toBe('A')
  await one.jobs.list()
  expect(one.jobs.jobs.value.map(({ name }) => name)).toEqual(['A'])
  await one.history.undo()
  expect(one.index.job.value.name).toBe('words')
})

test('what version 2 kept has the names of today, in every state that undo leads to', async () => {
  ;(await keptAs(2)).close()
  const one = await tab()
  await one.jobs.reopen()
  expect(one.index.job.value).toMatchObject({ ...HOT, version: EMPTY.version, name: 'A' })
  expect(one.index.job.value).not.toHaveProperty('elsewhere')
  await one.history.undo()
  expect(one.index.job.value).toMatchObject({ ...HOT, name: 'first' })
})

test('so have last words; a job of today is left as it is', async () => {
  words.set('stanchion-words:y', JSON.stringify({ rev: 7, job: OLD }))
  const one = await tab()
  await one.jobs.open('y')
  expect(one.index.job.value).toMatchObject(HOT)
  expect(asNow(one.index.job.value)).toBe(one.index.job.value)
})

test('a database that opens late still brings the job that was open; what was done meanwhile stays', async () => {
  vi.stubGlobal('fetch', async () => new Response(JSON.stringify({ job: { ...JOB, name: 'demo' }, report: { ends: {} } })))
  for (const busy of [false, true]) {
    vi.stubGlobal('indexedDB', new IDBFactory())
    const held = await keptAs(2) // a tab of before that does not let go
    const one = await tab()
    await one.jobs.reopen()
    expect(one.index.job.value.name).toBe('demo')
    expect(one.keep.keepFailed.value).toContain('close other tabs')
    if (busy) one.actions.type('rider.mass', '82 kg', 'measured')
    held.close()
    await vi.waitFor(() => expect(one.keep.keepFailed.value).toBe(''))
    await vi.waitFor(() => expect(one.index.job.value.name).toBe(busy ? 'demo' : 'A'))
    if (busy) expect(one.index.job.value).toMatchObject({ rider: { mass: { value: '82 kg' } } })
  }
})
