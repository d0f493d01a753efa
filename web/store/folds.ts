/** Which folds are open, by "place/fold". They are as they were left after a reload. */
import { type Signal, signal } from '@preact/signals'
import type { FieldPath } from '../generated/schema.ts'
import { stateOf } from './fields.ts'
import { homeOf, rowsOf } from './plan.ts'
import { go, type PlaceName } from './place.ts'
import { recalled, remember } from './remember.ts'

const KEY = 'stanchion-folds'
const left = new Set(recalled<string[]>(KEY, []))
const all = new Map<string, Signal<boolean>>()

/** Whether a fold is open. Opening one leaves the others alone. */
export function fold(key: string): Signal<boolean> {
  const found = all.get(key)
  if (found) return found
  const made = signal(left.has(key))
  all.set(key, made)
  made.subscribe((open) => {
    if (open === left.has(key)) return
    if (open) left.add(key)
    else left.delete(key)
    remember(KEY, [...left])
  })
  return made
}

/** The field that the hand is led to; its row takes the focus once it is drawn. */
export const wanted = signal<FieldPath | ''>('')

/** Bring a field out: its place, its fold, and the hand on it. */
export function reveal(path: FieldPath): void {
  const home = homeOf(path)
  if (!home) return
  const inRow = rowsOf(home.place, (one) => stateOf(one)?.applies ?? false).some((row) => row.includes(path))
  if (home.fold && !inRow) fold(home.fold).value = true
  wanted.value = path
  go(home.place, { top: false })
}

/** Open a fold of a place and bring it into view. */
export function openFold(place: PlaceName, name: string): void {
  fold(`${place}/${name}`).value = true
  go(place, { top: false })
  requestAnimationFrame(() => document.getElementById(`fold-${place}-${name}`)?.scrollIntoView({ block: 'start' }))
}
