import type { End } from '../../core/report.ts'
import { lookedAt } from '../../store/looked.ts'
import { look } from '../../store/place.ts'
import { build, forgetTry } from './build.ts'

/** Take what is looked at over as what was built: the answer, or the try. */
export function BuildThis({ end }: { end: End }) {
  const looked = lookedAt(end)
  if (!looked || looked.kind === 'built' || looked.kind === 'state') return null
  const trying = looked.kind === 'try'
  const { setup, problem } = looked
  return (
    <div class="build-this">
      {trying && problem && <p class="attend">{[problem.message, problem.limit, problem.way_out].filter(Boolean).join(' ')}</p>}
      {setup && looked.kind !== 'as found' && (
        <button
          type="button"
          class="filled"
          onClick={() => {
            build(end, setup)
            look('built')
            scrollTo({ top: 0 })
          }}
        >
          {trying ? 'Build this try' : 'Build this'}
        </button>
      )}
      {trying && (
        <button type="button" onClick={() => forgetTry(end)}>
          Back to the answer
        </button>
      )}
    </div>
  )
}
