import { useSignal } from '@preact/signals'
import type { FieldState } from '../../core/report.ts'
import { type } from '../../store/actions.ts'
import { textOf } from '../../store/fields.ts'
import type { FieldSchema } from '../../store/schema.ts'
import { origin } from '../field/Entry.tsx'
import { describedBy, fieldId } from '../field/words.ts'
import { groupsOf, textOfGroups } from './groups.ts'
import './shimrows.css'

const COLUMNS = ['how many', 'outside mm', 'thick mm'] as const

interface Props {
  field: FieldSchema
  state: FieldState | undefined
  refused: boolean
  within: boolean
  onTyping: () => void
}

/** Groups of equal shims, in any order: a row each, and an empty one for the next. */
export function ShimRows({ field, state, refused, within, onTyping }: Props) {
  // What is being typed stays in its cell until the hand leaves the table.
  const draft = useSignal<string[][] | null>(null)
  const rows = draft.value ?? [...groupsOf(textOf(field.path)), []]
  const id = fieldId(field.path)
  const from = origin(field, state)
  const write = (row: number, column: number, typed: string) => {
    const next = rows.map((cells) => [...cells])
    next[row]![column] = typed
    if (row === next.length - 1) next.push([])
    draft.value = next
    onTyping()
    type(field.path, textOfGroups(next), field.typed)
  }
  const leave = (event: FocusEvent) => {
    if (!(event.currentTarget as Element).contains(event.relatedTarget as Node | null)) draft.value = null
  }
  return (
    <div class="value shim-rows" role="group" aria-label={field.label} onBlurCapture={leave}>
      {COLUMNS.map((name) => (
        <span key={name} class="quiet" aria-hidden="true">
          {name}
        </span>
      ))}
      {rows.map((cells, row) =>
        COLUMNS.map((name, column) => (
          <input
            key={`${row} ${name}`}
            id={row + column === 0 ? id : undefined}
            name={row + column === 0 ? field.path : undefined}
            class={cells[column] ? from : 'unknown'}
            type="text"
            inputMode="decimal"
            autocomplete="off"
            placeholder="–"
            size={4}
            value={cells[column] ?? ''}
            aria-label={`${field.label}, group ${row + 1}: ${name}`}
            aria-invalid={refused}
            aria-describedby={describedBy(id, false, within, refused)}
            onInput={(event) => write(row, column, event.currentTarget.value)}
          />
        )),
      )}
    </div>
  )
}
