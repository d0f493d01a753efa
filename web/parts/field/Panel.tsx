import type { FieldState } from '../../core/report.ts'
import { amend, clear, type } from '../../store/actions.ts'
import { entryOf, textOf } from '../../store/fields.ts'
import { helpOf } from '../../store/help.ts'
import { type FieldSchema, schema, unitsOf } from '../../store/schema.ts'
import { apart } from '../../store/text.ts'
import { offered } from '../../store/units.ts'
import { isList, unitAt } from './Entry.tsx'
import { fieldId, limitWords, spreadText, usualWords } from './words.ts'

/** What is known of a value beside the value, in place under it: help, origin, +/-, unit and note. By key it is reached with arrow down. */
export function Panel({ field, state }: { field: FieldSchema; state: FieldState | undefined }) {
  const id = fieldId(field.path)
  const entry = entryOf(field.path)
  const quantity = field.kind === 'quantity'
  const words = [quantity && (usualWords(state) || limitWords(field)), helpOf(field.path), !entry && state?.origin === 'assumed' && `Assumed: ${state.reason}.`]
  return (
    <div class="panel wide" id={`${id}-panel`}>
      <p class="quiet" id={`${id}-usual`}>
        {words.filter(Boolean).join(' ')}
        <span class="aside"> Arrow down: origin, +/-, unit and note.</span>
      </p>
      {entry && <Origins field={field} />}
      {quantity && <Units field={field} state={state} />}
      {entry && (
        <>
          {quantity && (
            <Line label="+/- (95 %)" value={String(entry.plus_minus_95 ?? '')} placeholder={spreadText(state)} write={(text) => amend(field.path, { plus_minus_95: text })} numeric />
          )}
          <Line label="Note" value={entry.note ?? ''} write={(text) => amend(field.path, { note: text })} />
        </>
      )}
    </div>
  )
}

/** Where an entry comes from, and the way back to none. */
function Origins({ field }: { field: FieldSchema }) {
  const now = entryOf(field.path)!.origin ?? field.typed
  return (
    <div class="boxes" role="group" aria-label="Where it comes from">
      {schema.origins.map((origin) => (
        <Box key={origin} on={now === origin} act={() => amend(field.path, { origin })}>
          {origin[0]!.toUpperCase() + origin.slice(1)}
        </Box>
      ))}
      <button type="button" tabIndex={-1} onPointerDown={keepHand} onClick={() => clear(field.path)}>
        {field.optional ? 'Leave out' : 'Default'}
      </button>
    </div>
  )
}

/** The units that this field would be read in. The number stays as typed: this says what it was. */
function Units({ field, state }: { field: FieldSchema; state: FieldState | undefined }) {
  const units = offered(field)
  const now = unitAt(field, state)
  if (isList(field) || units.length < 2) return null
  const turn = (unit: string) => {
    const { number } = apart(textOf(field.path).replace(/[^\d.,eE+\-−].*$/, '').trim() + ` ${unit}`, unitsOf(field))
    if (number.trim()) type(field.path, `${number.trim()} ${unit}`, field.typed)
  }
  return (
    <div class="boxes" role="group" aria-label="Unit">
      {units.map((unit) => (
        <Box key={unit} on={now === unit} act={() => turn(unit)}>
          {unit}
        </Box>
      ))}
    </div>
  )
}

/** One of an either-or: the one in force in ink. The keypad stays up. */
function Box({ on, act, children }: { on: boolean; act: () => void; children: string }) {
  return (
    <button type="button" class={on ? 'on' : ''} tabIndex={-1} aria-pressed={on} onPointerDown={keepHand} onClick={act}>
      {children}
    </button>
  )
}

const keepHand = (event: PointerEvent) => event.preventDefault()

interface LineProps {
  label: string
  value: string
  placeholder?: string
  write: (text: string) => void
  numeric?: boolean
}

function Line({ label, value, placeholder = '', write, numeric = false }: LineProps) {
  return (
    <label class="line">
      <span>{label}</span>
      <input
        type="text"
        tabIndex={-1}
        inputMode={numeric ? 'decimal' : 'text'}
        autocomplete="off"
        maxLength={2000}
        value={value}
        placeholder={placeholder}
        onInput={(event) => write(event.currentTarget.value)}
      />
    </label>
  )
}
