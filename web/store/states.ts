/** The states of a fork's cartridge along their strokes: asked for while they are looked at, never with an edit. */
import { effect, signal, untracked } from '@preact/signals'
import type { StateLooked, StatesLooked } from '../core/report.ts'
import type { JobDocument } from './document.ts'
import { job, openId, report } from './index.ts'
import { place, states } from './place.ts'
import { askCore } from './work.ts'

interface Seen {
  id: string
  job: JobDocument
  /** What the core said; a text where it had no answer. */
  said: StatesLooked | string
}

const seen = signal<Seen | null>(null)
let asked: JobDocument | undefined

/** Charged, and opened laid over it: what a conversion is about. */
export const AT_FIRST = ['as built', 'opened into one'] as const

/** Whether this fork has such states. */
export const hasStates = (): boolean => report.value?.fields['front.air']?.value === 'sealed cartridge'

/** Whether they are looked at: the front's own way beside answer and built. */
export const looking = (): boolean => place.value === 'front' && states.value.length > 0 && hasStates()

/** What the core says of the open job's states; null until it has. `old`: of the entries before. */
export function statesSaid(): { said: StatesLooked | string; old: boolean } | null {
  const now = seen.value
  return now && now.id === openId.value ? { said: now.said, old: now.job !== job.value } : null
}

/** The state looked at (0) or the one laid over it (1); undefined where there is none, or the core has not told it yet. */
export function stateSeen(which: 0 | 1): StateLooked | undefined {
  const said = looking() ? statesSaid()?.said : undefined
  return said && typeof said !== 'string' ? said.states.find((one) => one.state === states.value[which]) : undefined
}

/** Every report that is heard is news of the job: what is looked at is asked for anew once the job is another. */
export function followStates(): void {
  effect(() => {
    if (report.value && looking()) untracked(() => void askFor(openId.value, job.value))
  })
}

async function askFor(id: string, now: JobDocument): Promise<void> {
  if (asked === now) return
  asked = now
  const reply = await askCore({ kind: 'states', job: now })
  if (asked !== now) return
  if (reply.kind === 'states' && reply.states) seen.value = { id, job: now, said: reply.states }
  if (reply.kind === 'failure') {
    asked = undefined
    seen.value = { id, job: now, said: reply.message }
  }
}

/** A tap on a state: it is looked at, and the one before it lies over it; on the one looked at: nothing lies over it any more. */
export const tapped = (now: readonly string[], state: string): readonly string[] => (now[0] === state ? [state] : [state, ...now.slice(0, 1)])
