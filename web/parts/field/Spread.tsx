import type { Signal } from '@preact/signals'
import type { FieldState } from '../../core/report.ts'
import type { FieldSchema } from '../../store/schema.ts'
import { origin } from './Entry.tsx'
import { fieldId, spreadText } from './words.ts'

/** The +/- beside a value; a tap opens what else is known of it. */
export function Spread({ field, state, open }: { field: FieldSchema; state: FieldState | undefined; open: Signal<boolean> }) {
  const shown = spreadText(state)
  const from = origin(field, state)
  const said = [from === 'unknown' ? 'not known' : from, shown && `${shown} ${state?.unit ?? ''}`].filter(Boolean).join(', ')
  return (
    <button
      type="button"
      class="spread"
      aria-expanded={open.value}
      aria-controls={`${fieldId(field.path)}-panel`}
      aria-label={`${field.label}: ${said}. More`}
      onClick={() => (open.value = !open.value)}
    >
      {shown || <span class="dots">···</span>}
    </button>
  )
}
