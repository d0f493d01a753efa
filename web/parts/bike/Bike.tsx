import type { End } from '../../core/report.ts'
import { stateOf } from '../../store/fields.ts'
import { report, reports } from '../../store/index.ts'
import { sized } from '../../store/looked.ts'
import { plain } from '../../store/text.ts'
import { PLAN } from '../../store/plan.ts'
import type { Line } from '../answer/lines.ts'
import { Lines } from '../answer/Answer.tsx'
import { Next } from '../answer/Next.tsx'
import { Field } from '../field/Field.tsx'
import { FieldFold } from '../fold/FieldFold.tsx'
import { Fold } from '../fold/Fold.tsx'
import { Ranges } from '../ranges/Ranges.tsx'
import { Frame } from '../shell/Frame.tsx'
import { Kinds } from './Kinds.tsx'
import { OnScales } from './OnScales.tsx'
import './bike.css'

const ENDS = ['front', 'rear'] as const

/** What stands on each axle, and the readings of bike and rider that say so. */
export function Bike() {
  const lines = ENDS.map(lineOf).filter((line) => line !== null)
  const front = sized(reports.front.value.report)
  return (
    <Frame room="bike" name="Bike">
      <div class="lead">
        <div class="answer" data-answer="bike" aria-live="polite">
          {lines.length > 0 ? <Lines lines={lines} /> : <p class="answer-none">No axle loads yet.</p>}
          <p>{front?.state === 'ok' && front.why[0]}</p>
          <Assumed />
          {report.value?.notes.map((note) => (
            <p key={note} class="attend">
              {note}
            </p>
          ))}
        </div>
      </div>
      <div class="picture">
        <OnScales />
        <div class="rows" id="fields" tabIndex={-1}>
          <Field path="bike.use" />
          <Field path="rider.mass" />
        </div>
      </div>
      <div class="why">
        <Kinds />
        <Next ends={ENDS} />
      </div>
      <div class="based">
        {PLAN.bike.folds.map((plan) => (
          <FieldFold key={plan.name} place="bike" plan={plan} shown={[]} />
        ))}
        <Fold place="bike" name="ranges" title="Usual ranges" says="common practice, or yours">
          <Ranges />
        </Fold>
      </div>
    </Frame>
  )
}

/** As weighed with the rider aboard; where that was not weighed, what the springs of that end carry. */
function lineOf(end: End): Line | null {
  const read = stateOf(`rider.${end}_axle`)
  const words = end === 'front' ? 'Front' : 'Rear'
  if (typeof read?.value === 'number') {
    const of = { value: read.value, unit: read.unit, plus_minus_95: read.plus_minus_95, decimals: 1, text: plain(read.value), plus_minus_text: read.plus_minus_text }
    return { words, figures: [{ of, unit: `${read.unit} on the axle` }] }
  }
  const load = sized(reports[end].value.report)?.load
  return load ? { words, figures: [{ of: load.sprung_mass, unit: 'kg on its springs' }] } : null
}

/** How much of the answer is assumed, while much of it is. */
function Assumed() {
  const said = report.value
  if (!said || said.measure_first.length === 0) return null
  const share = (end: End) => `${said.assumed[end].assumed} of ${said.assumed[end].of} at the ${end}`
  return (
    <p class="assumed-share">
      <span class="assumed">Mostly assumed values</span>: {share('front')}, {share('rear')}. Don’t order parts from this yet.
    </p>
  )
}
