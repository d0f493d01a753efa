import { useSignal } from '@preact/signals'
import { useEffect, useRef } from 'preact/hooks'
import { problemAt, stateOf } from '../../store/fields.ts'
import { type FieldSchema, schema } from '../../store/schema.ts'
import type { FieldPath } from '../../generated/schema.ts'
import { Choice } from './Choice.tsx'
import { Entry } from './Entry.tsx'
import { Panel } from './Panel.tsx'
import { Problem } from './Problem.tsx'
import { Spread } from './Spread.tsx'
import { fieldId, usualWords } from './words.ts'
import './field.css'

// A figure is half typed for a moment: what is wrong with it is said once the hand rests.
const REST = 700

/** One field of the job by its declaration: label, value with unit over its origin's line, +/-; the rest one tap away. */
export function Field({ path }: { path: FieldPath }) {
  const field = schema.fields[path]
  const state = stateOf(path)
  const open = useSignal(false)
  const within = useSignal(false)
  const resting = useSignal(true)
  const timer = useRef<ReturnType<typeof setTimeout>>(undefined)
  const place = useRef<HTMLDivElement>(null)
  const problem = resting.value ? problemAt(path) : null
  useEffect(() => {
    // What is said under the field, and whatever grew above it, must not push it under the strip.
    if (within.value) place.current?.scrollIntoView({ block: 'nearest' })
  }, [within.value, problem?.message])
  if (state && !state.applies) return null

  const typing = () => {
    resting.value = false
    clearTimeout(timer.current)
    timer.current = setTimeout(() => (resting.value = true), REST)
  }
  const leave = (event: FocusEvent) => {
    if ((event.currentTarget as Element).contains(event.relatedTarget as Node | null)) return
    within.value = false
    resting.value = true
  }
  const id = fieldId(path)
  const usual = usualWords(state)
  return (
    <div
      ref={place}
      class={rowClass(field, problem !== null)}
      id={path}
      onFocusCapture={() => (within.value = true)}
      onBlurCapture={leave}
    >
      <label for={id}>{field.label}</label>
      {field.kind === 'choice' ? (
        <Choice field={field} state={state} refused={problem !== null} />
      ) : (
        <Entry field={field} state={state} refused={problem !== null} within={within.value} onTyping={typing} />
      )}
      <Spread field={field} state={state} open={open} />
      {within.value && usual && (
        <p class="quiet wide" id={`${id}-usual`}>
          {usual}
        </p>
      )}
      <Problem field={field} problem={problem} />
      {open.value && <Panel field={field} state={state} />}
    </div>
  )
}

const LONG_CHOICE = 20

function rowClass(field: FieldSchema, refused: boolean): string {
  const long = field.kind === 'rates' || field.kind === 'pairs' || field.choices.some((choice) => choice.label.length > LONG_CHOICE)
  return `row${long ? ' long' : ''}${refused ? ' refused' : ''}`
}
