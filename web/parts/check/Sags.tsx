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
        Read the sags with a tape, each twice, and see whether they are as expected. They also correct what was not measured.
      </p>
    )
  }
  return (
    <div class="sags" data-sags="found" aria-live="polite">
      <a class="sags-refuse" href="#bike.sags_of">
        {found.of === 'built' ? 'Of the bike as built ›' : 'Of the bike as it came in ›'}
      </a>
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

/** Reading by reading: as it was, and as the sags have it. */
function Corrections({ found }: { found: Found }) {
  return (
    <section data-corrected={found.applied}>
      {found.corrections.length > 0 && (
        <table class="places corrections">
          <caption>{found.applied ? 'Corrected by your sags' : 'What your sags would correct'}</caption>
          <thead>
            <tr>
              <td />
              <th scope="col">was</th>
              <th scope="col">by the sags</th>
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
      <p>{found.words}</p>
      {found.corrections.length > 0 && (
        <a class="sags-refuse" href="#bike.sags_correct">
          {found.applied ? 'Use my readings as they are ›' : 'Correct them ›'}
        </a>
      )}
    </section>
  )
}
