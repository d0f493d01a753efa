import type { End } from '../../core/report.ts'
import { reports } from '../../store/index.ts'
import { Fold } from '../fold/Fold.tsx'
import { stepText } from '../figure/text.ts'
import { wide } from '../shell/wide.ts'

/** Why this spring, for whom it holds, and what to do at its seat. */
export function Why({ end }: { end: End }) {
  const { report } = reports[end].value
  if (report?.state !== 'ok') return null
  const { chosen, why, holds_for, seat, verdict } = report
  const title = verdict === 'open' ? 'Why not yet' : `Why ${stepText(chosen)}`
  const span = holds_for && holds_for.low !== null && holds_for.high !== null ? `for ${holds_for.low} to ${holds_for.high} ${holds_for.unit} in kit` : ''
  return (
    <Fold place={end} name="why" title={title} says={span} forced={wide.value}>
      <p class="why-words">{[...why, holds_for?.words, seat.words].filter(Boolean).join(' ')}</p>
    </Fold>
  )
}
