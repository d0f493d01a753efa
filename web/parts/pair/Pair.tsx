import type { End } from '../../core/report.ts'
import { builtOf } from '../../store/looked.ts'
import { look, lookAtStates, side, type Side } from '../../store/place.ts'
import { AT_FIRST, hasStates, looking } from '../../store/states.ts'
import './pair.css'

/** What is recommended and what is built, and at the front the states of its cartridge: boxes, the one looked at in ink. */
export function Pair({ ends }: { ends: readonly End[] }) {
  const built = ends.some((end) => builtOf(end) !== null)
  return (
    <div class="pair-boxes" role="group" aria-label="Looked at">
      <Box of="answer">Answer</Box>
      <Box of="built">{built ? 'Built' : 'Built: not yet'}</Box>
      {ends.length === 1 && ends[0] === 'front' && hasStates() && (
        <button type="button" class={looking() ? 'on' : ''} aria-pressed={looking()} onClick={() => looking() || lookAtStates(AT_FIRST)}>
          States
        </button>
      )}
    </div>
  )
}

function Box({ of, children }: { of: Side; children: string }) {
  const on = side.value === of && !looking()
  return (
    <button type="button" class={on ? 'on' : ''} aria-pressed={on} onClick={() => look(of)}>
      {children}
    </button>
  )
}
