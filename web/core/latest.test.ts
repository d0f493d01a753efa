import { expect, test } from 'vitest'
import { latestOnly } from './latest.ts'

/** An answerer whose answers are given by hand. */
function byHand() {
  const asked: number[] = []
  const open: (() => void)[] = []
  const ask = (question: number) => {
    asked.push(question)
    return new Promise<number>((resolve) => open.push(() => resolve(question * 10)))
  }
  const answerNext = async () => {
    open.shift()!()
    await new Promise((done) => setTimeout(done))
  }
  return { asked, ask, answerNext }
}

test('only the newest of the waiting questions is asked', async () => {
  const { asked, ask, answerNext } = byHand()
  const latest = latestOnly(ask)
  const replies = [latest(1), latest(2), latest(3), latest(4)]
  await answerNext()
  await answerNext()
  expect(await Promise.all(replies)).toEqual([10, undefined, undefined, 40])
  expect(asked).toEqual([1, 4])
})

test('a newcomer at the moment of an answer does not run beside the one that waited', async () => {
  const { asked, ask, answerNext } = byHand()
  const latest = latestOnly(ask)
  const first = latest(1)
  const second = latest(2)
  const third = first.then(() => latest(3))
  await answerNext()
  expect(asked).toEqual([1, 2])
  await answerNext()
  await answerNext()
  expect(await Promise.all([first, second, third])).toEqual([10, 20, 30])
})

test('a question that fails lets the next one through', async () => {
  const latest = latestOnly((question: number) => (question < 2 ? Promise.reject(new Error('no')) : Promise.resolve(question)))
  const first = latest(1)
  const second = latest(2)
  await expect(first).rejects.toThrow('no')
  expect(await second).toBe(2)
})
