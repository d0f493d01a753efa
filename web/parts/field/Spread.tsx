import type { FieldState } from '../../core/report.ts'
import type { FieldSchema } from '../../store/schema.ts'
import { fieldId, spreadText } from './words.ts'

/** The +/- beside a value; a tap leads to what else is known of it. By key it is reached through the value. */
export function Spread({ field, state }: { field: FieldSchema; state: FieldState | undefined }) {
  const shown = spreadText(state)
  return (
    <button type="button" class="spread" tabIndex={-1} aria-label={`${field.label}: ${shown ? `${shown} ${state?.unit ?? ''}, more` : 'more'}`} onClick={() => toPanel(field.path)}>
      {shown || <span class="dots">···</span>}
    </button>
  )
}

/** The hand goes to the value, and on to its +/- once that is drawn. */
function toPanel(path: string): void {
  document.getElementById(fieldId(path))?.focus()
}
