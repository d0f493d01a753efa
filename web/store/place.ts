/**
 * Where the hand is: a front door, the customer's path and five places, each with an address in the fragment; `?built` looks at
 * what is built.
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
/** The end that the strip shows where a place speaks of both. */
export const endAside = signal<End>('front')

/** The end that is looked at: a place of one end shows that end. */
export const endLooked = (): End => (place.value === 'front' || place.value === 'rear' ? place.value : endAside.value)

const LAST = 'stanchion-place'
const SCROLLS = 'stanchion-scroll'

/** An address of ours taken apart; null for any other fragment. */
export function read(hash: string): { room: Room; side: Side } | null {
  const [name, ...more] = hash.replace(/^#/, '').split('?')
  const room = ([...OUTSIDE, ...PLACES] as const).find((one) => one === name)
  return room ? { room, side: more.includes('built') ? 'built' : 'answer' } : null
}

export const address = (room: Room, of: Side = side.value): string => `#${room}${of === 'built' && isPlace(room) && room !== 'bike' ? '?built' : ''}`

/** Go to a place, at its old scroll position or at its top. Back leads here again. */
export function go(room: Room, how: { top?: boolean | undefined; side?: Side | undefined } = {}): void {
  const moved = room !== place.value
  keepScroll()
  if (how.top) scrolls[room] = 0
  side.value = how.side ?? side.value
  history[moved ? 'pushState' : 'replaceState']({ room }, '', address(room))
  arrive(room)
  if (!moved) scrollTo({ top: how.top === false ? scrollY : 0 })
}

/** The other one of the pair, in place: no step in the history. */
export function look(at: Side): void {
  side.value = at
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
  const { room, side: of } = asked ?? read(recalled(LAST, '#front')) ?? { room: 'front', side: 'answer' }
  side.value = of
  if (!(history.state as { room?: Room } | null)?.room && room !== 'door') {
    history.replaceState({ room: 'door' }, '', '#door')
    history.pushState({ room }, '', address(room))
  } else history.replaceState({ room }, '', address(room))
  arrive(room)
  addEventListener('popstate', () => {
    const next = read(location.hash)
    if (!next) return
    keepScroll()
    if (isPlace(next.room) && next.room !== 'bike') side.value = next.side
    arrive(next.room)
  })
  addEventListener('pagehide', keepScroll)
  document.addEventListener('visibilitychange', keepScroll)
}
