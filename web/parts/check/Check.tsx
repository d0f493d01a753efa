import { report, reports } from '../../store/index.ts'
import { lookedAt } from '../../store/looked.ts'
import { PLAN, rowsOf } from '../../store/plan.ts'
import { exists } from '../field/Field.tsx'
import { Rows } from '../field/Rows.tsx'
import { FieldFold } from '../fold/FieldFold.tsx'
import { Fold } from '../fold/Fold.tsx'
import { Pair } from '../pair/Pair.tsx'
import { Frame } from '../shell/Frame.tsx'
import { Conditions } from './Conditions.tsx'
import { Ride } from './Ride.tsx'
import { Sags } from './Sags.tsx'
import './check.css'

/** The sags found beside those expected; and what the setup that is looked at does hot, high, under another rider or with luggage. */
export function Check() {
  const worst = lookedAt('front')?.places.findLast((row) => row.key === 'hot and high')
  const shown = rowsOf('check', exists)
  const attitude = report.value?.attitude
  const { sags, ride = [] } = report.value ?? {}
  // What was read since comes before what would be elsewhere.
  const lead = ride.map(({ axle, change }) => change && `${axle === 'front' ? 'Front' : 'Rear'}. ${change.words}`).find(Boolean) || sags?.lead
  const hotAndHigh = worst?.words ? `${worst.label}: ${worst.words.charAt(0).toLowerCase()}${worst.words.slice(1)}` : 'Hot and high: being worked out.'
  return (
    <Frame room="check" name="Check">
      <div class="lead">
        <Pair ends={['front', 'rear']} />
        <p class="check-answer" data-answer="check" data-stale={reports.front.value.stale} aria-live="polite">
          {lead || hotAndHigh}
        </p>
        {lead && <p class="quiet">{hotAndHigh}</p>}
        {attitude && <p class="quiet">{attitude.words}</p>}
      </div>
      <div class="picture">
        <h2 class="check-head">Sags found</h2>
        <div id="fields" tabIndex={-1}>
          <Rows rows={shown} />
        </div>
        <Sags />
      </div>
      <div class="why">
        {sags ? (
          <Fold place="check" name="hot" title="Hot, high and others" says={worst?.label.toLowerCase()}>
            <Tables />
          </Fold>
        ) : (
          <Tables />
        )}
      </div>
      <div class="based">
        {PLAN.check.folds.map((plan) => (
          <FieldFold key={plan.name} place="check" plan={plan} shown={[]}>
            {plan.name === 'ride' && <Ride />}
          </FieldFold>
        ))}
      </div>
    </Frame>
  )
}

/** Both ends under the other conditions. Beside sags that were found they make room: a place is three screens at most. */
const Tables = () => (
  <div class="conditions">
    <Conditions end="front" />
    <Conditions end="rear" />
  </div>
)
