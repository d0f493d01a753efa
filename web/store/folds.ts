/** Which folds are open, by "place/fold". They are as they were left after a reload. */
import { type Signal, signal } from '@preact/signals'
import type { FieldPath } from '../generated/schema.ts'
import { stateOf } from './fields.ts'
import { homeOf, rowsOf } from './plan.ts'
import { go, type PlaceName, side } from './place.ts'
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
  const [axle, key] = path.split('.') as [PlaceName, string]
  if (key.startsWith('tried_')) return go(axle, { side: 'answer' })
  wanted.value = path
  if (key.startsWith('built_')) return go(axle, { side: 'built', top: false })
  const home = homeOf(path)
  if (!home) return
  const open = rowsOf(home.place, (one) => stateOf(one)?.applies ?? false).some((row) => row.includes(path))
  // At what is built the readings are folded, so that its own stand in the open.
  if (open && side.value === 'built') fold(`${home.place}/based`).value = true
  if (!open && home.fold) fold(home.fold).value = true
  go(home.place, { top: false })
}
