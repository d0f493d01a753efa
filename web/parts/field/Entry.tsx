import { useSignal } from '@preact/signals'
import { useRef } from 'preact/hooks'
import type { FieldState } from '../../core/report.ts'
import { type } from '../../store/actions.ts'
import { entryOf, textOf } from '../../store/fields.ts'
import { type FieldSchema, unitsOf } from '../../store/schema.ts'
import { apart, together } from '../../store/text.ts'
import { assumedText, describedBy, fieldId } from './words.ts'

interface Props {
  field: FieldSchema
  state: FieldState | undefined
  refused: boolean
  within: boolean
  onTyping: () => void
  /** What stands in an empty field of which nothing is assumed. */
  empty: string
}

/** The value as typed, over the line of its origin. An empty one shows what is assumed in its place. */
export function Entry({ field, state, refused, within, onTyping, empty }: Props) {
  const input = useRef<HTMLInputElement>(null)
  const stored = apart(textOf(field.path), unitsOf(field))
  // What is being typed is shown as it is typed; it is taken apart once the hand leaves.
  const draft = useSignal<string | null>(null)
  const text = draft.value ?? stored.number
  const unit = unitAt(field, state)
  const assumed = assumedText(field, state)
  const id = fieldId(field.path)
  const from = origin(field, state)

  const write = (typed: string) => {
    draft.value = typed
    onTyping()
    type(field.path, together(typed, unit || field.unit), field.typed)
  }
  return (
    <span class={`value ${from}`} onPointerDown={(event) => toInput(event, input.current)}>
      {from === 'assumed' && (
        <span class="word" id={`${id}-origin`}>
          assumed
        </span>
      )}
      <input
        ref={input}
        id={id}
        name={field.path}
        type="text"
        // A list brings its own units, and a phone's decimal keypad has no minus sign.
        inputMode={isList(field) || field.low < 0 ? 'text' : 'decimal'}
        autocomplete="off"
        autocapitalize="off"
        spellcheck={false}
        enterkeyhint="next"
        size={Math.max(2, (text || assumed || empty).length)}
        value={text}
        placeholder={assumed || (state?.entered ? '' : empty)}
        aria-invalid={refused}
        aria-describedby={describedBy(id, from === 'assumed', within, refused)}
        onInput={(event) => write(event.currentTarget.value)}
        onPaste={(event) => isList(field) && pasteLines(event, write)}
        onBlur={() => (draft.value = null)}
        onKeyDown={(event) => event.key === 'Enter' && toNext(event.currentTarget)}
      />
      {unit && <span class="unit">{unit}</span>}
    </span>
  )
}

/** Lines of a table, as a spreadsheet copies them: a single line takes them apart by semicolons. */
function pasteLines(event: ClipboardEvent, write: (typed: string) => void): void {
  const text = event.clipboardData?.getData('text').trim() ?? ''
  if (!text.includes('\n')) return
  const input = event.currentTarget as HTMLInputElement
  event.preventDefault()
  input.setRangeText(text.split(/\s*\n\s*/).join('; '), input.selectionStart ?? 0, input.selectionEnd ?? 0, 'end')
  write(input.value)
}

export const isList = (field: FieldSchema): boolean => field.kind === 'rates' || field.kind === 'pairs' || field.kind === 'shims'

/** The unit that stands beside a value; none where the text brings one of its own. */
export function unitAt(field: FieldSchema, state: FieldState | undefined): string {
  const stored = apart(textOf(field.path), unitsOf(field))
  return stored.number !== '' && stored.unit === '' ? '' : stored.unit || state?.unit || field.unit
}

/** The origin whose line stands under the value; while something new is typed the entry itself says it first. */
export function origin(field: FieldSchema, state: FieldState | undefined): string {
  return entryOf(field.path)?.origin ?? (state?.entered ? field.typed : (state?.origin ?? 'unknown'))
}

/** Enter goes on to the next field of the place; after the last one the keypad goes. */
function toNext(input: HTMLInputElement): void {
  const all = [...document.querySelectorAll<HTMLInputElement>('main .row .value input')].filter((one) => one.checkVisibility({ contentVisibilityAuto: true } as object))
  const next = all[all.indexOf(input) + 1]
  if (next) next.focus()
  else input.blur()
}

/** A tap beside the figure, on its unit or its line, means the figure. */
function toInput(event: PointerEvent, input: HTMLInputElement | null): void {
  if (event.target instanceof HTMLInputElement) return
  event.preventDefault()
  input?.focus()
}
