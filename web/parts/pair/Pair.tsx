import type { End } from '../../core/report.ts'
import { builtOf } from '../../store/looked.ts'
import { look, side, type Side } from '../../store/place.ts'
import './pair.css'

/** What is recommended and what is built: two boxes, the one looked at in ink. */
export function Pair({ ends }: { ends: readonly End[] }) {
  const built = ends.some((end) => builtOf(end) !== null)
  return (
    <div class="pair-boxes" role="group" aria-label="Looked at">
      <Box of="answer">Answer</Box>
      <Box of="built">{built ? 'Built' : 'Built: not yet'}</Box>
    </div>
  )
}

function Box({ of, children }: { of: Side; children: string }) {
  const on = side.value === of
  return (
    <button type="button" class={on ? 'on' : ''} aria-pressed={on} onClick={() => look(of)}>
      {children}
    </button>
  )
}
