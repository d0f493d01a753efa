import 'fake-indexeddb/auto'
import { IDBFactory } from 'fake-indexeddb'
import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import { rows, stubStorage, tabOn } from './testing.ts'

beforeEach(() => {
  vi.stubGlobal('indexedDB', new IDBFactory())
  // Tabs of one process would hear each other late: each test tells by itself.
  vi.stubGlobal('BroadcastChannel', undefined)
  stubStorage()
})
afterEach(async () => {
  // What the tabs of one test put off must not come to the next.
  await new Promise((done) => setTimeout(done, 200))
  vi.unstubAllGlobals()
  vi.restoreAllMocks()
})

test('two tabs that edit one job keep both edits, whoever is sooner', async () => {
  const { one, id } = await tabOn()
  const { one: two } = await tabOn(id)
  one.actions.type('rider.mass', '82 kg', 'measured')
  await one.keep.settled()
  two.actions.type('front.rate', '4.4', 'stated')
  await two.keep.settled()
  expect(two.index.job.value).toMatchObject({ rider: { mass: { value: '82 kg' } }, front: { rate: { value: '4.4' } } })
  expect((await rows(two, id)).at(-1)!.job).toEqual(two.index.job.value)
  // The first has slept through it, and typed on at a row that is gone.
  one.actions.type('rider.mass', '83 kg', 'measured')
  await one.keep.settled()
  expect((await rows(one, id)).at(-1)!.job).toMatchObject({ rider: { mass: { value: '83 kg' } }, front: { rate: { value: '4.4' } } })
})

test('edits that wait behind one that met another tab\'s keep what that tab did', async () => {
  const { one, id } = await tabOn()
  const { one: two } = await tabOn(id)
  one.actions.type('rider.mass', '82 kg', 'measured')
  await one.keep.settled()
  two.actions.type('front.rate', '4.4', 'stated')
  two.actions.type('rear.rate', '90', 'stated')
  await two.keep.settled()
  const whole = { rider: { mass: { value: '82 kg' } }, front: { rate: { value: '4.4' } }, rear: { rate: { value: '90' } } }
  expect((await rows(two, id)).at(-1)!.job).toMatchObject(whole)
  expect(two.index.job.value).toMatchObject(whole)
})

test('a tab that slept while the other typed on loses nothing and takes nothing away', async () => {
  const { one, id } = await tabOn()
  one.actions.type('rider.mass', '8', 'measured')
  await one.keep.settled()
  const { one: two } = await tabOn(id)
  for (const text of ['81', '82', '83']) {
    one.actions.type('rider.mass', text, 'measured')
    await one.keep.settled()
  }
  // The row after the one that this tab knows has been typed over: its number is free, and still too old.
  two.actions.type('rear.rate', '90', 'stated')
  await two.keep.settled()
  expect((await rows(two, id)).at(-1)!.job).toMatchObject({ rider: { mass: { value: '83' } }, rear: { rate: { value: '90' } } })
  expect(two.index.job.value).toMatchObject({ rider: { mass: { value: '83' } } })
})

test('a tab that is only shown or hidden writes nothing', async () => {
  const { one, id } = await tabOn()
  const { one: two } = await tabOn(id)
  one.actions.type('rider.mass', '82 kg', 'measured')
  await one.keep.settled()
  const before = await rows(one, id)
  await two.jobs.catchUp()
  expect(two.index.job.value).toMatchObject({ rider: { mass: { value: '82 kg' } } })
  expect(await rows(one, id)).toEqual(before)
})

test.each(['before', 'while'])('what another tab wrote right after an edit here is taken over, made %s its state was being read', async (when) => {
  const { one, id } = await tabOn()
  const { one: two } = await tabOn(id)
  const edit = () => one.actions.type('rider.mass', '93 kg', 'measured')
  const { newest } = one.database
  // Read slowly: meanwhile this tab's edit lands, and the other's on top of it.
  vi.spyOn(one.database, 'newest').mockImplementationOnce(async (...asked) => {
    if (when === 'while') edit()
    await one.keep.settled()
    await two.jobs.catchUp()
    two.actions.type('front.rate', '4.4', 'stated')
    await two.keep.settled()
    return newest(...asked)
  })
  if (when === 'before') edit()
  await one.jobs.catchUp()
  expect(one.index.job.value).toMatchObject({ rider: { mass: { value: '93 kg' } }, front: { rate: { value: '4.4' } } })
})

test('a tab whose edit cannot be kept is not held up by what another writes', async () => {
  const { one, id } = await tabOn()
  const { one: two } = await tabOn(id)
  const full = vi.spyOn(IDBObjectStore.prototype, 'add').mockImplementation(() => {
    throw new DOMException('full', 'QuotaExceededError')
  })
  one.actions.type('rider.mass', '93 kg', 'measured')
  await one.keep.settled()
  full.mockRestore()
  two.actions.type('front.rate', '4.4', 'stated')
  await two.keep.settled()
  await one.jobs.catchUp()
  expect(one.index.job.value).toMatchObject({ rider: { mass: { value: '93 kg' } } })
  one.actions.type('rear.rate', '90', 'stated')
  await one.keep.settled()
  expect((await rows(one, id)).at(-1)!.job).toMatchObject({ rider: { mass: { value: '93 kg' } }, front: { rate: { value: '4.4' } }, rear: { rate: { value: '90' } } })
})
