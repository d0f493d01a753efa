import type { End } from '../../core/report.ts'
import { report, reports } from '../../store/index.ts'
import { Fields } from '../field/Fields.tsx'
import { MeasureFirst } from './MeasureFirst.tsx'
import './bike.css'

/** Both ends in one sentence each, what that does to the bike, and the readings of bike and rider. */
export function Bike() {
  const said = report.value
  return (
    <section class="part" id="bike" aria-labelledby="bike-name">
      <div class="lead">
        <h2 id="bike-name">Bike and rider</h2>
        <div class="lead-lines" aria-live="polite">
          <Lead end="front" name="Front" to="springs" />
          <Lead end="rear" name="Rear" to="rear" />
        </div>
      </div>
      <div class="why">
        <div>
        {said?.attitude && <p>{said.attitude.words}</p>}
        {said?.notes.map((note) => (
          <p key={note} class="attend">
            {note}
          </p>
        ))}
        <MeasureFirst />
        </div>
      </div>
      <div class="rest">
        <Fields part="bike and rider" />
      </div>
    </section>
  )
}

function Lead({ end, name, to }: { end: End; name: string; to: string }) {
  const view = reports[end].value
  const words = view.report?.state === 'ok' ? view.report.answer : view.report?.state === 'none' ? 'No spring on offer fits.' : 'No answer yet.'
  return (
    <p class={view.stale === 'last good' ? 'lead-line old' : 'lead-line'}>
      <a href={`#${to}`}>{name} ›</a>
      <span>
        {figuresBold(words)}
        {view.stale === 'last good' && <span class="attend"> Last good.</span>}
      </span>
    </p>
  )
}

/** The core's sentence with its figures set heavier. */
function figuresBold(words: string) {
  return words.split(/(\d+(?:\.\d+)?)/).map((part, index) => (index % 2 ? <b key={index}>{part}</b> : part))
}
