import { expect, test } from 'vitest'
import { type OfferDocument, setupOf, ticked, withNewOption, withOption, withoutComplaint, withoutOption, withPart } from './offer.ts'

const OFFER: OfferDocument = {
  currency: 'EUR',
  complaints: ['harsh', 'dives', 'fades'],
  options: [
    { name: 'one', answers: [1, 3], parts: [{ what: 'oil', count: '2', price: '18' }] },
    { name: 'two', answers: [2] },
  ],
}

test('a complaint less: every option goes on answering the same words', () => {
  const words = (offer: OfferDocument) => offer.options!.map(({ answers }) => answers!.map((at) => offer.complaints![at - 1]))
  expect(words(OFFER)).toEqual([['harsh', 'fades'], ['dives']])
  expect(words(withoutComplaint(OFFER, 1))).toEqual([['harsh', 'fades'], []])
  expect(words(withoutComplaint(OFFER, 0))).toEqual([['fades'], ['dives']])
})

test('a copy stands behind its original and is no part of it', () => {
  const made = withNewOption(OFFER, OFFER.options![0]!, 0)
  expect(made.options!.map(({ name }) => name)).toEqual(['one', 'one', 'two'])
  const changed = withPart(made, 1, 0, { price: '20' })
  expect(changed.options!.map(({ parts }) => parts?.[0]?.price)).toEqual(['18', '20', undefined])
})

test('edits leave the offer before as it was', () => {
  const before = JSON.stringify(OFFER)
  withOption(OFFER, 0, { name: 'other' })
  withPart(OFFER, 0, 0, undefined)
  withoutOption(OFFER, 0)
  withoutComplaint(OFFER, 0)
  expect(JSON.stringify(OFFER)).toBe(before)
})

test('a part taken out, an option taken out', () => {
  expect(withPart(OFFER, 0, 0, undefined).options![0]!.parts).toEqual([])
  expect(withoutOption(OFFER, 0).options!.map(({ name }) => name)).toEqual(['two'])
})

test('a complaint is answered once, in the order of the complaints', () => {
  expect(ticked([3], 1, true)).toEqual([1, 3])
  expect(ticked([1, 3], 3, true)).toEqual([1, 3])
  expect(ticked([1, 3], 1, false)).toEqual([3])
  expect(ticked(undefined, 2, true)).toEqual([2])
})

test('a setup goes into the offer by the keys of what is built', () => {
  expect(setupOf([['front.built_rate', '4.2 N/mm'], ['front.built_gap_left', '110 mm']])).toEqual({ rate: '4.2 N/mm', gap_left: '110 mm' })
})
