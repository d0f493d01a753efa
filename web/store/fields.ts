/** What is known of one field, each in a signal of its own: an edit elsewhere leaves its view alone. */
import { computed, type ReadonlySignal } from '@preact/signals'
import type { FieldState, Problem } from '../core/report.ts'
import type { FieldPath } from '../generated/schema.ts'
import { type Entry, entryAt } from './document.ts'
import { endProblems, job, report } from './index.ts'

interface Known {
  entry: ReadonlySignal<Entry | undefined>
  state: ReadonlySignal<FieldState | undefined>
  problem: ReadonlySignal<Problem | null>
}

/** What the report does not tell: a field that neither applies nor holds an entry. */
const IDLE: FieldState = {
  applies: false,
  entered: false,
  text: '',
  value: null,
  rates: [],
  pairs: [],
  unit: '',
  plus_minus_95: null,
  plus_minus_text: '',
  origin: null,
  reason: '',
  note: '',
  usual: null,
  problem: null,
}

const all = new Map<FieldPath, Known>()

function known(path: FieldPath): Known {
  const found = all.get(path)
  if (found) return found
  const state = computed(() => report.value ? (report.value.fields[path] ?? IDLE) : undefined)
  const ofEnd = computed(() => endProblems.value.find((problem) => problem.path === path))
  const made = {
    entry: computed(() => entryAt(job.value, path)),
    state,
    problem: computed(() => state.value?.problem ?? ofEnd.value ?? null),
  }
  all.set(path, made)
  return made
}

/** What is entered at a field; undefined where nothing is. */
export const entryOf = (path: FieldPath): Entry | undefined => known(path).entry.value

/** The text that is entered at a field; empty where nothing is. */
export const textOf = (path: FieldPath): string => String(entryOf(path)?.value ?? '')

/** What the core made of a field. */
export const stateOf = (path: FieldPath): FieldState | undefined => known(path).state.value

/** What is wrong at a field: a refused entry, or an impossible bike that names it. */
export const problemAt = (path: FieldPath): Problem | null => known(path).problem.value
