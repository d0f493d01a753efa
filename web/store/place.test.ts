import { expect, test } from 'vitest'
import { address, read, side } from './place.ts'

test.each([
  ['#front', { room: 'front', side: 'answer' }],
  ['#front?built', { room: 'front', side: 'built' }],
  ['#door', { room: 'door', side: 'answer' }],
  ['#mybike?alone-again', { room: 'mybike', side: 'answer' }],
  ['#job=abc', null],
  ['', null],
  ['#fronts', null],
])('%s is read', (hash, place) => {
  expect(read(hash)).toEqual(place)
})

test('an address says which of the pair is looked at, where there is a pair', () => {
  side.value = 'built'
  expect([address('front'), address('bike'), address('door'), address('mybike'), address('card')]).toEqual(['#front?built', '#bike', '#door', '#mybike', '#card?built'])
  side.value = 'answer'
  expect(address('card')).toBe('#card')
})
