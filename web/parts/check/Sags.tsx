import type { Report } from '../../core/report.ts'
import { report } from '../../store/index.ts'
import { Figure } from '../figure/Figure.tsx'
import { SagRule } from './SagRule.tsx'
import './check.css'
import './sags.css'

type Found = NonNullable<Report['sags']>
const NAMES = { front: 'Front', rear: 'Rear' } as const

/** The sags found beside those expected, and what they correct. Says how to begin while none is entered. */
export function Sags() {
  const found = report.value?.sags
  if (!found) {
    return (
      <p class="quiet" data-sags="none">
        Read each sag twice with a tape, and see whether it is as expected. The sags also correct what was not measured.
      </p>
    )
  }
  return (
    <div class="sags" data-sags="found" aria-live="polite">
      {found.ends.length > 0 && (
        <a class="sags-refuse" href="#bike.sags_of">
          {found.of === 'built' ? 'Of the bike as built ›' : 'Of the bike as it came in ›'}
        </a>
      )}
      {found.ends.map((end) => (
        <section key={end.axle} data-sags-end={end.axle}>
          <h3>{NAMES[end.axle]}</h3>
          {end.rows.length > 0 && <SagRule end={end} />}
          {end.refused ? <p class="attend">{end.refused}</p> : end.words.map((words) => <p key={words}>{words}</p>)}
        </section>
      ))}
      <Corrections found={found} />
    </div>
  )
}

/** Reading by reading: as it was, and as sags, a push and a mark have it. */
function Corrections({ found }: { found: Found }) {
  // What only a push corrects is refused where the push is entered.
  const refuse = found.by === 'your push' ? 'front.push_correct' : 'bike.sags_correct'
  return (
    <section data-corrected={found.applied}>
      {found.corrections.length > 0 && (
        <table class="places corrections">
          <caption>{found.applied ? `Corrected by ${found.by}` : `What ${found.by} would correct`}</caption>
          <thead>
            <tr>
              <td />
              <th scope="col">was</th>
              <th scope="col">is now</th>
            </tr>
          </thead>
          <tbody>
            {found.corrections.map(({ path, label, before, after, words }) => (
              <tr key={path} title={words}>
                <th scope="row">
                  <a href={`#${path}`}>{label}</a>
                </th>
                <td>
                  <Figure of={before} />
                </td>
                <td>
                  <Figure of={after} />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {found.words.map((words) => (
        <p key={words}>{words}</p>
      ))}
      {found.corrections.length > 0 && (
        <a class="sags-refuse" href={`#${refuse}`}>
          {found.applied ? 'Use my readings as they are ›' : 'Correct them ›'}
        </a>
      )}
    </section>
  )
}
