import type { Problem } from '../../core/report.ts'
import type { EndView } from '../../store/index.ts'
import { schema } from '../../store/schema.ts'
import { said } from '../field/words.ts'

/** How an answer stands, where there is anything to be said of that. */
export function Standing({ view }: { view: EndView }) {
  if (view.stale === 'saved') return <p class="answer-standing">Saved answer, being worked out again</p>
  const doubt = view.report?.state === 'ok' && /^(fit|keep)$/.test(view.report.verdict) && view.report.doubt
  if (view.problems.length === 0 && !doubt) return null
  return (
    <div class="answer-standing answer-problems">
      {doubt && <p>{doubt}</p>}
      {view.stale === 'last good' && <strong>Last good result. It waits for this:</strong>}
      {view.problems.map((problem) => (
        <ProblemLine key={problem.path + problem.code} {...problem} />
      ))}
    </div>
  )
}

export function ProblemLine(problem: Problem) {
  const { path, limit, way_out } = problem
  return (
    <p>
      {path && <a href={`#${path}`}>{schema.fields[path].label} ›</a>} {[said(problem), limit, way_out].filter(Boolean).join(' ')}
    </p>
  )
}
