import { reports } from '../../store/index.ts'
import { Fields } from '../field/Fields.tsx'
import { Places } from './Places.tsx'
import './elsewhere.css'

/** What the built setup does hot, high, under another rider or with luggage. */
export function Elsewhere() {
  const front = reports.front.value.report
  const last = front && front.state !== 'refused' ? front.elsewhere.findLast((row) => row.key === 'hot and high') : undefined
  return (
    <section class="part" id="elsewhere" aria-labelledby="elsewhere-name">
      <div class="lead">
        <h2 id="elsewhere-name">Hot, high, elsewhere</h2>
        {last?.words && (
          <p class="elsewhere-answer">
            {last.label}: {last.words.charAt(0).toLowerCase() + last.words.slice(1)}
          </p>
        )}
        <Places end="front" />
        <Places end="rear" />
      </div>
      <div class="rest">
        <Fields part="hot, high, elsewhere" title="Looked at" />
      </div>
    </section>
  )
}
