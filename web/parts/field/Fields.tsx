import { useSignal, useSignalEffect } from '@preact/signals'
import type { Part } from '../../generated/schema.ts'
import { problemAt, stateOf } from '../../store/fields.ts'
import { type FieldSchema, fieldsOf } from '../../store/schema.ts'
import { Field } from './Field.tsx'
import { wanted } from './reveal.ts'

/** The readings of a part: the main ones in sight, the others behind one tap. */
export function Fields({ part, title = 'Rests on' }: { part: Part; title?: string }) {
  const fields = fieldsOf(part)
  const main = fields.filter((field) => field.main)
  return (
    <div class="rows">
      <div class="rests">
        <h3>{title}</h3>
        <Key />
      </div>
      {main.map((field) => (
        <Field key={field.path} path={field.path} />
      ))}
      <More fields={fields.filter((field) => !field.main)} />
    </div>
  )
}

/** The others stay folded, and undrawn, until asked for, led to, or refused. */
function More({ fields }: { fields: FieldSchema[] }) {
  const open = useSignal(false)
  const shown = fields.filter((field) => stateOf(field.path)?.applies !== false)
  useSignalEffect(() => {
    if (fields.some((field) => field.path === wanted.value)) open.value = true
  })
  if (shown.length === 0) return null
  const drawn = open.value || shown.some((field) => problemAt(field.path) !== null)
  return (
    <details open={drawn} onToggle={(event) => (open.value = event.currentTarget.open)}>
      <summary>More readings: {shown.length}</summary>
      {drawn && fields.map((field) => <Field key={field.path} path={field.path} />)}
    </details>
  )
}

/** What the lines under the figures mean. */
function Key() {
  return (
    <p class="key">
      <span class="measured">measured</span>
      <span class="stated">stated</span>
      <span class="assumed">assumed</span>
    </p>
  )
}
