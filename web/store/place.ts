/**
 * Where the hand is: a front door, the customer's path and five places, each with an address in the fragment; `?built` looks at
 * what is built, `?states=as-built,opened-into-one` at one state of the fork's cartridge with another laid over it.
 */
import { signal } from '@preact/signals'
import type { End } from '../core/report.ts'
import { recalled, remember } from './remember.ts'

export const PLACES = ['bike', 'front', 'rear', 'check', 'card'] as const
export type PlaceName = (typeof PLACES)[number]
/** Rooms of their own, which are no part of a job. */
const OUTSIDE = ['door', 'mybike'] as const
export type Room = (typeof OUTSIDE)[number] | PlaceName
export const isPlace = (room: Room): room is PlaceName => room !== 'door' && room !== 'mybike'
export type Side = 'answer' | 'built'

/** Where the page stands now. */
export const place = signal<Room>('front')
/** Which of the pair is looked at: what is recommended, or what is built. */
export const side = signal<Side>('answer')
/** The state of the cartridge that the front looks at, and the one laid over it; none where it looks at one of the pair. */
export const states = signal<readonly string[]>([])
/** The end that the strip shows where a place speaks of both. */
export const endAside = signal<End>('front')

/** The end that is looked at: a place of one end shows that end. */
export const endLooked = (): End => (place.value === 'front' || place.value === 'rear' ? place.value : endAside.value)

const LAST = 'stanchion-place'
const SCROLLS = 'stanchion-scroll'

interface Address {
  room: Room
  side: Side
  states: readonly string[]
}

const STATES = 'states='
const named = (states: readonly string[]) => states.map((one) => one.replaceAll(' ', '-')).join(',')

/** An address of ours taken apart; null for any other fragment. */
export function read(hash: string): Address | null {
  const [name, ...more] = hash.replace(/^#/, '').split('?')
  const room = ([...OUTSIDE, ...PLACES] as const).find((one) => one === name)
  const said = room === 'front' ? more.find((one) => one.startsWith(STATES))?.slice(STATES.length) : undefined
  const looked = said ? said.split(',').slice(0, 2).map((one) => one.replaceAll('-', ' ')) : []
  return room ? { room, side: more.includes('built') ? 'built' : 'answer', states: looked } : null
}

export const address = (room: Room, of: Side = side.value): string => `#${room}${of === 'built' && isPlace(room) && room !== 'bike' ? '?built' : ''}`

const whole = (room: Room): string => (room === 'front' && states.value.length > 0 ? `#front?${STATES}${named(states.value)}` : address(room))

/** Look at states of the cartridge, or at none any more. Back leads out of them again. */
export function lookAtStates(next: readonly string[]): void {
  const [was, is] = [states.value.length > 0, next.length > 0]
  if (was && !is && (history.state as { states?: true } | null)?.states) return history.back()
  states.value = next
  history[is && !was ? 'pushState' : 'replaceState']({ room: 'front', ...(is && { states: true }) }, '', whole('front'))
}

/** Go to a place, at its old scroll position or at its top. Back leads here again. */
export function go(room: Room, how: { top?: boolean | undefined; side?: Side | undefined } = {}): void {
  const moved = room !== place.value
  keepScroll()
  if (how.top) scrolls[room] = 0
  if (moved || (how.side && how.side !== side.value)) states.value = []
  side.value = how.side ?? side.value
  history[moved ? 'pushState' : 'replaceState']({ room, ...(states.value.length > 0 && { states: true }) }, '', whole(room))
  arrive(room)
  if (!moved) scrollTo({ top: how.top === false ? scrollY : 0 })
}

/** The other one of the pair, in place: no step in the history. */
export function look(at: Side): void {
  side.value = at
  states.value = []
  history.replaceState({ room: place.value }, '', address(place.value))
}

function arrive(room: Room): void {
  if (room === 'front' || room === 'rear') endAside.value = room
  place.value = room
  remember(LAST, address(room))
}

/** Where each place was scrolled to; kept for a reload. */
const scrolls: Partial<Record<Room, number>> = recalled(SCROLLS, {}, sessionStorageOrNone())

export const scrolledTo = (room: Room): number => scrolls[room] ?? 0

function keepScroll(): void {
  scrolls[place.value] = Math.round(scrollY)
  remember(SCROLLS, scrolls, sessionStorageOrNone())
}

function sessionStorageOrNone(): Storage | undefined {
  try {
    return sessionStorage
  } catch {
    return undefined // Storage is switched off.
  }
}

/** Follow the address from now on. A first visit lands in a place, and one step back from it is the door. */
export function followAddress(): void {
  history.scrollRestoration = 'manual'
  const asked = read(location.hash)
  const { room, side: of, states: seen } = asked ?? read(recalled(LAST, '#front')) ?? { room: 'front', side: 'answer', states: [] }
  side.value = of
  states.value = seen
  if (!(history.state as { room?: Room } | null)?.room && room !== 'door') {
    history.replaceState({ room: 'door' }, '', '#door')
    history.pushState({ room }, '', whole(room))
  } else history.replaceState({ room }, '', whole(room))
  arrive(room)
  addEventListener('popstate', () => {
    const next = read(location.hash)
    if (!next) return
    keepScroll()
    if (isPlace(next.room) && next.room !== 'bike') side.value = next.side
    states.value = next.states
    arrive(next.room)
  })
  addEventListener('pagehide', keepScroll)
  document.addEventListener('visibilitychange', keepScroll)
}
