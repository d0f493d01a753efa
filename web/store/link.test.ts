import { expect, test } from 'vitest'
import { EMPTY } from './document.ts'
import { isLink, pack, unpack } from './link.ts'

const job = { ...EMPTY, name: 'Vélo № 7', rider: { mass: { value: '104 kg', origin: 'measured' as const } }, offer: { currency: '€', options: [{ name: 'Öl', parts: [{ what: 'oil', price: '19,50' }] }] } }

test('a job comes out of its link as it went in, from letters and from digits', async () => {
  // Lengths of every remainder: what is packed differs in each.
  for (let more = 0; more < 20; more += 1) {
    const one = { ...job, note: 'x7q'.repeat(more) + more }
    const { letters, digits } = await pack(one)
    expect(letters).toMatch(/^#job=1\.[\w-]+$/)
    expect(digits).toMatch(/^#job=1n\d+$/)
    expect(JSON.parse(await unpack(letters))).toEqual(one)
    expect(JSON.parse(await unpack(digits))).toEqual(one)
  }
})

test('a link that unpacks to more than any job holds is stopped on the way', async () => {
  const { letters } = await pack({ ...job, note: ' '.repeat(5_000_000) })
  expect(letters.length).toBeLessThan(10_000)
  await expect(unpack(letters)).rejects.toThrow('more than any job holds')
})

test.each([
  ['#job=2.abc', 'newer version'], ['#job=', 'holds no job'], ['#job=1.***', 'holds no job'], ['#job=1.AAAA', 'damaged'], ['#job=1n12a', 'holds no job'], ['#job=1n1', 'holds no job'],
  ['#job=1n99999999999999999', 'holds no job'],
])('%s is refused in words', async (hash, words) => {
  await expect(unpack(hash)).rejects.toThrow(words)
})

test('a link cut short is refused', async () => {
  const { letters } = await pack(job)
  await expect(unpack(letters.slice(0, -8))).rejects.toThrow('damaged')
})

test('places are no links', () => {
  expect(['#front', '#front?built', '', '#jobs', '#job=1.x'].map(isLink)).toEqual([false, false, false, false, true])
})
