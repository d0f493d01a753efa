import type { End } from '../../core/report.ts'
import { reports } from '../../store/index.ts'
import { stepText } from '../figure/told.ts'

/** Why this spring, and what to do at its seat. */
export function Why({ end }: { end: End }) {
  const { report } = reports[end].value
  if (report?.state !== 'ok') return null
  const { chosen, why, holds_for, seat } = report
  return (
    <section class="why-words">
      <h2>Why {stepText(chosen)}</h2>
      <p>{[...why, holds_for?.words, seat?.words].filter(Boolean).join(' ')}</p>
    </section>
  )
}
