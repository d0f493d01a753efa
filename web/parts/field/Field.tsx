import { useSignal } from '@preact/signals'
import { useEffect, useRef } from 'preact/hooks'
import { entryOf, problemAt, stateOf } from '../../store/fields.ts'
import { type FieldSchema, schema } from '../../store/schema.ts'
import type { FieldPath } from '../../generated/schema.ts'
import { Choice } from './Choice.tsx'
import { Entry, isList } from './Entry.tsx'
import { Panel } from './Panel.tsx'
import { afterPress } from './press.ts'
import { Problem } from './Problem.tsx'
import { Spread } from './Spread.tsx'
import { later } from '../shell/later.tsx'
import { fieldId } from './words.ts'
import './field.css'

const ShimRows = later(() => import('../damping/ShimRows.tsx').then(({ ShimRows }) => ShimRows))

// A figure is half typed for a moment: what is wrong with it is said once the hand rests.
const REST = 700

/** Fields of other kinds do not exist: what does not apply, or is not known to, is not drawn. */
export const exists = (path: FieldPath): boolean => stateOf(path)?.applies ?? entryOf(path) !== undefined

/** Whether the customer read it. */
const isCustomers = (path: FieldPath): boolean => entryOf(path)?.note?.startsWith(schema.customers) ?? false

/** One field by its declaration: label, value with unit over its origin's line, +/-. With the hand in it, all that is known of it. */
export function Field({ path, label }: { path: FieldPath; label?: string | undefined }) {
  const field = schema.fields[path]
  const state = stateOf(path)
  const within = useSignal(false)
  const resting = useSignal(true)
  const timer = useRef<ReturnType<typeof setTimeout>>(undefined)
  const place = useRef<HTMLDivElement>(null)
  const problem = resting.value ? problemAt(path) : null
  useEffect(() => {
    // What opens under the field, and whatever grew above it, must not push it under the strip.
    if (within.value) place.current?.querySelector('.value')?.scrollIntoView({ block: 'nearest' })
  }, [within.value, problem?.message])
  if (!exists(path)) return null

  const typing = () => {
    resting.value = false
    clearTimeout(timer.current)
    timer.current = setTimeout(() => (resting.value = true), REST)
  }
  const leave = (event: FocusEvent) => {
    const row = event.currentTarget as Element
    if (row.contains(event.relatedTarget as Node | null)) return
    resting.value = true
    afterPress(() => (within.value = row.contains(document.activeElement)))
  }
  const id = fieldId(path)
  return (
    <div ref={place} class={rowClass(field, problem !== null, within.value)} id={path} onFocusCapture={() => (within.value = true)} onBlurCapture={leave} onKeyDown={walk}>
      <label for={id}>
        {label === '' ? <span class="aside">{field.label}</span> : (label ?? field.label)}
        {isCustomers(path) && <span class="quiet"> (customer’s)</span>}
      </label>
      {field.kind === 'choice' ? (
        <Choice field={field} state={state} refused={problem !== null} within={within.value} />
      ) : field.kind === 'shims' ? (
        <ShimRows field={field} state={state} refused={problem !== null} within={within.value} onTyping={typing} />
      ) : (
        // half of a pair has no room for words
        <Entry field={field} state={state} refused={problem !== null} within={within.value} onTyping={typing} empty={label ? '–' : 'not known'} />
      )}
      <Spread field={field} state={state} />
      {/* What is wrong stands first: what opens under it moves no button of it away from the finger. */}
      <Problem field={field} problem={problem} />
      {within.value && <Panel field={field} state={state} />}
    </div>
  )
}

/** One stop a field: arrow down leads from the value into what is known of it, Escape back. */
function walk(event: KeyboardEvent): void {
  const row = event.currentTarget as HTMLElement
  const value = row.querySelector<HTMLElement>('.value input, .value select')
  if (event.key === 'Escape') value?.focus()
  else if (event.key !== 'ArrowDown' || !(event.target instanceof HTMLInputElement) || event.target !== value) return
  else row.querySelector<HTMLElement>('.panel button, .panel input')?.focus()
  event.preventDefault()
}

// First of a pair whose other half is another kind of figure: its unit must stand.
const MIXED: FieldPath[] = ['front.raised_volume', 'rear.leverage', 'conditions.luggage', 'front.ports', 'rear.ports']

function rowClass(field: FieldSchema, refused: boolean, within: boolean): string {
  const long = isList(field)
  return ['row', long && 'long', MIXED.includes(field.path) && 'mixed', refused && 'refused', within && 'within'].filter(Boolean).join(' ')
}
