import { expect, test, vi } from 'vitest'
import { address, look, lookAtStates, place, read, side, states } from './place.ts'

test.each([
  ['#front', { room: 'front', side: 'answer', states: [] }],
  ['#front?built', { room: 'front', side: 'built', states: [] }],
  ['#front?states=as-built,opened-into-one', { room: 'front', side: 'answer', states: ['as built', 'opened into one'] }],
  ['#front?states=as-built,oil-moved,gap-replaced', { room: 'front', side: 'answer', states: ['as built', 'oil moved'] }],
  ['#rear?states=as-built', { room: 'rear', side: 'answer', states: [] }],
  ['#door', { room: 'door', side: 'answer', states: [] }],
  ['#mybike?alone-again', { room: 'mybike', side: 'answer', states: [] }],
  ['#job=abc', null],
  ['', null],
  ['#fronts', null],
])('%s is read', (hash, said) => {
  expect(read(hash)).toEqual(said)
})

test('an address says which of the pair is looked at, where there is a pair', () => {
  side.value = 'built'
  expect([address('front'), address('bike'), address('door'), address('mybike'), address('card')]).toEqual(['#front?built', '#bike', '#door', '#mybike', '#card?built'])
  side.value = 'answer'
  expect(address('card')).toBe('#card')
})

test('states are looked at by an address of their own, one step of the history, and left with the other side', () => {
  const steps: string[] = []
  const going = (how: string) => (state: unknown, _: string, to: string) => {
    history_.state = state
    steps.push(`${how} ${to}`)
  }
  const history_ = { state: null as unknown, pushState: going('push'), replaceState: going('replace'), back: () => steps.push('back') }
  vi.stubGlobal('history', history_)
  side.value = 'answer'
  place.value = 'front'
  lookAtStates(['as built', 'opened into one'])
  lookAtStates(['oil moved', 'as built'])
  lookAtStates([])
  expect(steps).toEqual(['push #front?states=as-built,opened-into-one', 'replace #front?states=oil-moved,as-built', 'back'])
  look('built')
  expect(states.value).toEqual([])
  expect(steps.at(-1)).toBe('replace #front?built')
  side.value = 'answer'
  vi.unstubAllGlobals()
})
