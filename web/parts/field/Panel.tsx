import type { FieldState } from '../../core/report.ts'
import { amend, clear } from '../../store/actions.ts'
import { entryOf } from '../../store/fields.ts'
import { type FieldSchema, schema } from '../../store/schema.ts'
import { fieldId, limitWords, spreadText, usualWords } from './words.ts'

/** What is known of a value beside the value, in place under it. */
export function Panel({ field, state }: { field: FieldSchema; state: FieldState | undefined }) {
  const id = fieldId(field.path)
  const entry = entryOf(field.path)
  const quantity = field.kind === 'quantity'
  return (
    <div class="panel wide" id={`${id}-panel`}>
      {field.how && <p>{field.how}</p>}
      {quantity && <p class="quiet">{[usualWords(state), limitWords(field)].filter(Boolean).join(' ')}</p>}
      {entry ? (
        <Known field={field} state={state} />
      ) : (
        <p class="quiet">{state?.origin === 'assumed' ? `Assumed: ${state.reason}. Enter your own.` : 'Nothing is entered.'}</p>
      )}
    </div>
  )
}

/** Origin, +/- and note of an entry, and the way back to none. */
function Known({ field, state }: { field: FieldSchema; state: FieldState | undefined }) {
  const id = fieldId(field.path)
  const entry = entryOf(field.path)!
  return (
    <>
      <fieldset class="origins">
        <legend>Where it comes from</legend>
        {schema.origins.map((origin) => (
          <label key={origin}>
            <input
              type="radio"
              name={`${id}-from`}
              checked={(entry.origin ?? field.typed) === origin}
              onChange={() => amend(field.path, { origin })}
            />
            <span class={origin}>{origin}</span>
          </label>
        ))}
      </fieldset>
      {field.kind === 'quantity' && (
        <label class="line">
          <span>Give or take, 95 %</span>
          <input
            type="text"
            inputMode="decimal"
            autocomplete="off"
            value={String(entry.plus_minus_95 ?? '')}
            placeholder={spreadText(state)}
            onInput={(event) => amend(field.path, { plus_minus_95: event.currentTarget.value })}
          />
        </label>
      )}
      <label class="line">
        <span>Note</span>
        <input
          type="text"
          autocomplete="off"
          maxLength={2000}
          value={entry.note ?? ''}
          onInput={(event) => amend(field.path, { note: event.currentTarget.value })}
        />
      </label>
      <button type="button" class="link" onClick={() => clear(field.path)}>
        {field.optional ? 'Leave it out' : 'Assume it again'}
      </button>
    </>
  )
}
