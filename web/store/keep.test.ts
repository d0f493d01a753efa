import 'fake-indexeddb/auto'
import { IDBFactory } from 'fake-indexeddb'
import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import type { Row } from './database.ts'
import type { JobDocument } from './document.ts'
import { JOB, rows, stubStorage, type Tab, tab, tabOn } from './testing.ts'

let words: Map<string, string>

/** How many last words stand. */
const spoken = () => [...words.keys()].filter((key) => key.startsWith('stanchion-words:')).length

const masses = async (one: Tab, id: string) => (await rows(one, id)).map(({ job }) => (typeof job.rider?.mass === 'object' ? job.rider.mass?.value : job.rider?.mass))

beforeEach(() => {
  vi.stubGlobal('indexedDB', new IDBFactory())
  // Tabs of one process would hear each other late: each test tells by itself.
  vi.stubGlobal('BroadcastChannel', undefined)
  words = stubStorage()
})
afterEach(async () => {
  // What the tabs of one test put off must not come to the next.
  await new Promise((done) => setTimeout(done, 200))
  vi.unstubAllGlobals()
  vi.restoreAllMocks()
})

test('every edit is a row; typing on at one field takes the place of what was typed there', async () => {
  const { one, id } = await tabOn()
  for (const text of ['8', '82', '82 kg']) one.actions.type('rider.mass', text, 'measured')
  one.actions.type('front.rate', '4.4', 'stated')
  await one.keep.settled()
  expect(await masses(one, id)).toEqual(['80 kg', '82 kg', '82 kg'])
  expect(spoken()).toBe(0)
})

test('rows reach the database in the order of the edits', async () => {
  const { one, id } = await tabOn()
  // Each write ends at its own time: a write that did not wait for the one before it would come out of order.
  for (let mass = 60; mass < 80; mass += 1) {
    one.keep.keep({ job: { ...JOB, rider: { mass } }, step: `${mass}` })
    if (mass % 3 === 0) await new Promise((done) => setTimeout(done))
  }
  await one.keep.settled()
  const found = await masses(one, id)
  expect(found.at(-1)).toBe(79)
  expect(found).toEqual(['80 kg', ...Array.from({ length: 20 }, (_, at) => 60 + at)])
})

test('last words that the database has overtaken are not believed; newer ones are', async () => {
  const { one, id } = await tabOn()
  one.actions.type('rider.mass', '90 kg', 'measured')
  await one.keep.settled()
  const { rev } = one.keep.top.value
  words.set(`stanchion-words:${id}`, JSON.stringify({ rev, job: { ...JOB, name: 'stale' } }))
  const { one: two } = await tabOn(id)
  expect(two.index.job.value.name).toBe('A')
  words.set(`stanchion-words:${id}`, JSON.stringify({ rev: rev + 1, job: { ...JOB, name: 'newer' } }))
  const { one: three } = await tabOn(id)
  expect(three.index.job.value.name).toBe('newer')
  await three.keep.settled()
  expect((await rows(three, id)).at(-1)!.job.name).toBe('newer')
  expect(spoken()).toBe(0)
})

test('a key that was pressed while the row before it was being written outlives the page', async () => {
  const { one, id } = await tabOn()
  one.actions.type('rider.mass', '8', 'measured')
  one.actions.type('rider.mass', '82', 'measured')
  // The page is gone before any row is: all that was said is what went out with the keys.
  words.clear()
  const said = await one.database.within((db) => db.get('words', id))
  expect(said).toMatchObject({ job: { rider: { mass: { value: '82' } } } })
  await one.keep.settled()
  // Words of a page that was killed: newer than any row.
  await one.database.within((db) => db.put('words', { id, rev: one.keep.top.value.rev + 1, job: { ...JOB, name: 'newer' } }))
  const { one: two } = await tabOn(id)
  expect(two.index.job.value.name).toBe('newer')
  await two.database.within((db) => db.put('words', { id, rev: 1, job: { ...JOB, name: 'stale' } }))
  const { one: three } = await tabOn(id)
  expect(three.index.job.value.name).toBe('newer')
})

test('the words say the counter that their row will have', async () => {
  const { one, id } = await tabOn()
  for (const [field, text] of [['rider.mass', '81 kg'], ['front.rate', '4.4'], ['rear.rate', '90']] as const) one.actions.type(field, text, 'measured')
  const { rev } = JSON.parse(words.get(`stanchion-words:${id}`)!) as { rev: number }
  await one.keep.settled()
  expect((await rows(one, id)).at(-1)!.rev).toBe(rev)
})

test('fifty steps back and forth again, over a reload, and none when nothing is left', async () => {
  const { one, id } = await tabOn()
  const seen: JobDocument[] = [one.index.job.value]
  for (let at = 0; at < 60; at += 1) {
    one.actions.type(at % 2 ? 'rider.mass' : 'front.rate', `${40 + at}`, 'measured')
    await one.keep.settled()
    seen.push(one.index.job.value)
  }
  for (let at = 59; at >= 30; at -= 1) {
    await one.history.undo()
    expect(one.index.job.value).toEqual(seen[at])
  }
  const { one: two } = await tabOn(id)
  expect(two.index.job.value).toEqual(seen[30])
  for (let at = 29; at >= 0; at -= 1) await two.history.undo()
  expect(two.index.job.value).toEqual(seen[0])
  expect(two.history.canUndo.value).toBe(false)
  const { one: three } = await tabOn(id)
  for (let at = 1; at <= 60; at += 1) await three.history.redo()
  expect(three.index.job.value).toEqual(seen[60])
  expect(three.history.canRedo.value).toBe(false)
  await three.history.undo()
  three.actions.type('rear.rate', '99', 'stated')
  await three.keep.settled()
  expect(three.history.canRedo.value).toBe(false)
  await three.history.undo()
  expect(three.index.job.value).toEqual(seen[59])
})

test('a full device is said, the words are kept, and nothing is taken away', async () => {
  const { one, id } = await tabOn()
  const full = vi.spyOn(IDBObjectStore.prototype, 'add').mockImplementation(() => {
    throw new DOMException('full', 'QuotaExceededError')
  })
  one.actions.type('rider.mass', '82 kg', 'measured')
  await one.keep.settled()
  expect(one.keep.keepFailed.value).toContain('no room left')
  expect(spoken()).toBe(1)
  full.mockRestore()
  one.actions.type('rear.rate', '90', 'stated')
  await one.keep.settled()
  expect(one.keep.keepFailed.value).toBe('')
  expect((await rows(one, id)).at(-1)!.job).toMatchObject({ rider: { mass: { value: '82 kg' } }, rear: { rate: { value: '90' } } })
})

test('a connection that died in the background is opened again', async () => {
  const { one, id } = await tabOn()
  one.database.atOnce()!.close()
  one.actions.type('rider.mass', '82 kg', 'measured')
  await one.keep.settled()
  expect(one.keep.keepFailed.value).toBe('')
  expect(await masses(one, id)).toEqual(['80 kg', '82 kg'])
})

test('a row that cannot be read gives way to the one before it', async () => {
  const { one, id } = await tabOn()
  one.actions.type('rider.mass', '82 kg', 'measured')
  await one.keep.settled()
  await one.database.within((db) => db.put('rows', { id, rev: 99 } as Row))
  await one.database.within((db) => db.put('answers', { id, report: {} } as never))
  const { one: two } = await tabOn(id)
  expect(two.index.job.value).toMatchObject({ rider: { mass: { value: '82 kg' } } })
  expect(two.index.report.value).toBeNull()
  await one.database.within((db) => db.put('rows', { id, rev: 4 } as Row)) // and one where the next will stand
  two.actions.type('rider.mass', '84 kg', 'measured')
  await two.keep.settled()
  const { one: three } = await tabOn(id)
  expect(three.index.job.value).toMatchObject({ rider: { mass: { value: '84 kg' } } })
})

test('deleted is out of the list and can be brought back', async () => {
  const { one, id } = await tabOn()
  const other = await one.jobs.add({ ...JOB, name: 'B', owner: 'Q.' })
  await one.jobs.list()
  expect(one.jobs.jobs.value).toHaveLength(2)
  await one.jobs.remove(other.id)
  expect(one.jobs.jobs.value.map((head) => head.id)).toEqual([id])
  expect(one.jobs.removedJobs.value.map(({ name }) => name)).toEqual(['B'])
  await one.jobs.restore(other.id)
  expect(one.jobs.jobs.value.filter((head) => one.jobs.matches(head, 'q. b')).map(({ name }) => name)).toEqual(['B'])
})

test('after the first job of one\'s own the browser is asked to keep it, and not before', async () => {
  const persist = vi.fn(async () => true)
  vi.stubGlobal('navigator', { storage: { persist, persisted: async () => false } })
  const one = await tab()
  expect(persist).not.toHaveBeenCalled()
  await one.jobs.add(JOB)
  await one.jobs.add(JOB)
  expect(persist).toHaveBeenCalledTimes(1)
  expect(one.jobs.persisted.value).toBe(true)
})

test('jobs that the browser threw away are missed, those that were deleted are not', async () => {
  const { one, id } = await tabOn()
  await one.jobs.list()
  await one.database.within((db) => db.put('heads', { ...one.jobs.jobs.value[0]!, removed: 1 }))
  await one.jobs.list()
  expect([id, one.list.missed.value]).toEqual([id, 0])
  vi.stubGlobal('indexedDB', new IDBFactory())
  const two = await tab()
  await two.jobs.list()
  expect(two.list.missed.value).toBe(1)
})

test('last words stand where the database holds nothing of their job, with the counter that they had', async () => {
  words.set('stanchion-words:x', JSON.stringify({ rev: 7, job: { ...JOB, name: 'words' } }))
  const { one } = await tabOn('x')
  await one.keep.settled()
  expect((await rows(one, 'x')).map(({ rev, job }) => [rev, job.name])).toEqual([[7, 'words']])
  expect(spoken()).toBe(0)
})

test('where the database could not be read, words give way to what it holds newer and stand over what is older', async () => {
  const { one, id } = await tabOn()
  one.actions.type('rider.mass', '90 kg', 'measured')
  await one.keep.settled()
  for (const [rev, name] of [[1, 'stale'], [9, 'newer']] as const) {
    words.set(`stanchion-words:${id}`, JSON.stringify({ rev, job: { ...JOB, name } }))
    const two = await tab()
    const open = vi.spyOn(IDBDatabase.prototype, 'transaction').mockImplementation(() => {
      throw new DOMException('not now', 'QuotaExceededError')
    })
    await two.jobs.open(id)
    expect(two.index.job.value.name).toBe(name)
    await two.keep.settled()
    open.mockRestore()
    two.keep.keep({ job: two.index.job.value, step: '' })
    await two.keep.settled()
    expect(two.index.job.value.name).toBe(rev === 9 ? 'newer' : 'A')
    expect((await rows(two, id)).at(-1)!.job.name).toBe(rev === 9 ? 'newer' : 'A')
  }
})
