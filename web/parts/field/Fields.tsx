import { useSignal } from '@preact/signals'
import type { Part } from '../../generated/schema.ts'
import { problemAt, report } from '../../store/index.ts'
import { type FieldSchema, fieldsOf } from '../../store/schema.ts'
import { Field } from './Field.tsx'

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

/** The others stay folded until asked for, or until one of them is refused. */
function More({ fields }: { fields: FieldSchema[] }) {
  const open = useSignal(false)
  const shown = fields.filter((field) => report.value?.fields[field.path]?.applies !== false)
  if (shown.length === 0) return null
  const refused = shown.some((field) => problemAt(field.path) !== null)
  return (
    <details open={open.value || refused} onToggle={(event) => (open.value = event.currentTarget.open)}>
      <summary>More readings: {shown.length}</summary>
      {fields.map((field) => (
        <Field key={field.path} path={field.path} />
      ))}
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
