import type { End } from '../../core/report.ts'
import type { FieldPath } from '../../generated/schema.ts'
import { report, reports } from '../../store/index.ts'
import { sized } from '../../store/looked.ts'
import { homeOf } from '../../store/plan.ts'
import './next.css'

interface Reading {
  path: FieldPath
  words: string
}

/** The one next reading: what narrows the answer most, a tap from its field. */
export function Next({ ends }: { ends: readonly End[] }) {
  const next = best(ends)
  if (!next) return null
  return (
    <p class="next" data-next={next.path}>
      <span>
        <b>Next:</b> {next.words.charAt(0).toLowerCase() + next.words.slice(1).replace(/\.$/, '')}.
      </span>
      <a href={`#${next.path}`}>How ›</a>
    </p>
  )
}

/** The rider's weight before all; else by what the runs say once they are there; before that by the bench's custom, for these ends first. */
function best(ends: readonly End[]): Reading | undefined {
  const all = report.value?.measure_first ?? []
  if (all[0]?.path === 'rider.mass') return all[0]
  const ranked = ends.flatMap((end) => {
    const [first] = sized(reports[end].value.report)?.measure_next ?? []
    return first ? [first] : []
  })
  if (ranked.length > 0) return ranked.sort((a, b) => b.share - a.share)[0]
  return all.find(({ path }) => ends.some((end) => homeOf(path)?.place === end)) ?? all[0]
}
