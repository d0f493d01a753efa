import { useSignal } from '@preact/signals'
import { useRef } from 'preact/hooks'
import type { FieldState } from '../../core/report.ts'
import { type } from '../../store/actions.ts'
import { entryOf, textOf } from '../../store/fields.ts'
import { type FieldSchema, unitsOf } from '../../store/schema.ts'
import { apart, nextUnit, offered, together } from '../../store/text.ts'
import { assumedText, fieldId } from './words.ts'

interface Props {
  field: FieldSchema
  state: FieldState | undefined
  refused: boolean
  /** The hand is in this row: then the unit is a button. */
  within: boolean
  onTyping: () => void
}

/** The value as typed, over the line of its origin. An empty one shows what is assumed in its place. */
export function Entry({ field, state, refused, within, onTyping }: Props) {
  const input = useRef<HTMLInputElement>(null)
  // A list brings its own units, and a phone's decimal keypad has no minus sign.
  const isList = field.kind === 'rates' || field.kind === 'pairs'
  const units = unitsOf(field)
  const stored = apart(textOf(field.path), units)
  // What is being typed is shown as it is typed; it is taken apart once the hand leaves.
  const draft = useSignal<string | null>(null)
  const chosen = useSignal('')
  const text = draft.value ?? stored.number
  const ownUnit = stored.number !== '' && stored.unit === ''
  const unit = ownUnit ? '' : stored.unit || chosen.value || state?.unit || field.unit
  const assumed = assumedText(field, state)
  const id = fieldId(field.path)

  const write = (typed: string, as: string) => {
    draft.value = typed
    onTyping()
    type(field.path, together(typed, as), field.typed)
  }
  const turnUnit = () => {
    const next = nextUnit(unit, units)
    chosen.value = next
    const { number } = apart(text.replace(/[^\d.,eE+\-−].*$/, '').trim() + ` ${next}`, units)
    if (text.trim()) write(number, next)
  }
  const leave = () => {
    draft.value = null
    chosen.value = ''
  }
  return (
    <span class={`value ${origin(field, state)}`} onPointerDown={(event) => toInput(event, input.current)}>
      {origin(field, state) === 'assumed' && (
        <span class="word" id={`${id}-origin`}>
          assumed
        </span>
      )}
      <input
        ref={input}
        id={id}
        name={field.path}
        type="text"
        inputMode={isList || field.low < 0 ? 'text' : 'decimal'}
        autocomplete="off"
        autocapitalize="off"
        spellcheck={false}
        enterkeyhint="done"
        size={Math.max(2, (text || assumed || EMPTY).length)}
        value={text}
        placeholder={assumed || (state?.entered ? '' : EMPTY)}
        aria-invalid={refused}
        aria-describedby={`${id}-origin ${id}-usual ${id}-problem`}
        onInput={(event) => write(event.currentTarget.value, chosen.value || unit || field.unit)}
        onBlur={leave}
        onKeyDown={(event) => event.key === 'Enter' && event.currentTarget.blur()}
      />
      {within && !isList && offered(units).length > 1 ? (
        <button
          type="button"
          class="unit"
          aria-label={`Unit: ${unit || 'as typed'}. Change it to ${nextUnit(unit, units)}`}
          onPointerDown={(event) => event.preventDefault()}
          onClick={turnUnit}
        >
          {unit || 'unit'}
        </button>
      ) : (
        unit && <span class="unit">{unit}</span>
      )}
    </span>
  )
}

const EMPTY = 'not known'

/** The origin whose line stands under the value; while something new is typed the entry itself says it first. */
export function origin(field: FieldSchema, state: FieldState | undefined): string {
  return entryOf(field.path)?.origin ?? (state?.entered ? field.typed : (state?.origin ?? 'unknown'))
}

/** A tap beside the figure, on its unit or its line, means the figure. */
function toInput(event: PointerEvent, input: HTMLInputElement | null): void {
  if (event.target instanceof HTMLInputElement || event.target instanceof HTMLButtonElement) return
  event.preventDefault()
  input?.focus()
}
