import type { Problem as Found } from '../../core/report.ts'
import { type } from '../../store/actions.ts'
import { type FieldSchema, unitsOf } from '../../store/schema.ts'
import { apart, together } from '../../store/text.ts'
import { fieldId, said } from './words.ts'

/** What is wrong at a field, the readings it could have, the limit and the way out. */
export function Problem({ field, problem }: { field: FieldSchema; problem: Found | null }) {
  return (
    <div class={problem ? 'problem wide' : 'problem'} id={`${fieldId(field.path)}-problem`} aria-live="polite">
      {problem && (
        <>
          <p class="attend">{said(problem)}</p>
          {problem.readings.length > 0 && (
            <div class="readings">
              {problem.readings.map((reading) => (
                <Reading key={reading} field={field} reading={reading} />
              ))}
            </div>
          )}
          {(problem.limit || problem.way_out) && <p class="quiet">{[problem.limit, problem.way_out].filter(Boolean).join(' ')}</p>}
        </>
      )}
    </div>
  )
}

/** One reading on offer; a bare one is in the field's unit, as it would be read. */
function Reading({ field, reading }: { field: FieldSchema; reading: string }) {
  const whole = together(reading, field.unit)
  const { number, unit } = apart(whole, unitsOf(field))
  return (
    <button type="button" onClick={() => type(field.path, whole, field.typed)}>
      <b>{number}</b> {unit}
    </button>
  )
}
