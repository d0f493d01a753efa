import type { FieldState } from '../../core/report.ts'
import { type } from '../../store/actions.ts'
import { textOf } from '../../store/fields.ts'
import type { FieldSchema } from '../../store/schema.ts'
import { origin } from './Entry.tsx'
import { describedBy, fieldId } from './words.ts'

/** One of a few: the system's own list, over the line of its origin. */
export function Choice({ field, state, refused, within }: { field: FieldSchema; state: FieldState | undefined; refused: boolean; within: boolean }) {
  const id = fieldId(field.path)
  const chosen = textOf(field.path) || String(state?.value ?? '')
  const known = field.choices.some((choice) => choice.key === chosen)
  const from = origin(field, state)
  return (
    <span class={`value ${from}`}>
      {from === 'assumed' && (
        <span class="word" id={`${id}-origin`}>
          assumed
        </span>
      )}
      <select
        id={id}
        name={field.path}
        value={chosen}
        aria-invalid={refused}
        aria-describedby={describedBy(id, from === 'assumed', within, refused)}
        onChange={(event) => type(field.path, event.currentTarget.value, field.typed)}
      >
        {!known && <option value={chosen}>{chosen || 'Choose'}</option>}
        {field.choices.map((choice) => (
          <option key={choice.key} value={choice.key}>
            {choice.label}
          </option>
        ))}
      </select>
    </span>
  )
}
