import type { FieldPath } from '../../generated/schema.ts'
import { stateOf } from '../../store/fields.ts'
import { report, reports } from '../../store/index.ts'
import { lookedAt } from '../../store/looked.ts'
import { PLAN, rowsOf } from '../../store/plan.ts'
import { exists } from '../field/Field.tsx'
import { Rows } from '../field/Rows.tsx'
import { FieldFold, summary } from '../fold/FieldFold.tsx'
import { Fold } from '../fold/Fold.tsx'
import { Pair } from '../pair/Pair.tsx'
import { Frame } from '../shell/Frame.tsx'
import { wide } from '../shell/wide.ts'
import { Conditions } from './Conditions.tsx'
import { Ride } from './Ride.tsx'
import { Sags } from './Sags.tsx'
import './check.css'

const HOT_AND_HIGH: FieldPath[] = ['conditions.hot_temperature', 'conditions.high_altitude']

/** The sags found beside those expected; and what the setup that is looked at does hot, high, under another rider or with luggage. */
export function Check() {
  const worst = lookedAt('front')?.places.findLast((row) => row.key === 'hot and high')
  const shown = rowsOf('check', exists)
  // An altitude and a heat that nobody entered are no place where it is ridden.
  const elsewhere = HOT_AND_HIGH.some((path) => stateOf(path)?.entered)
  const attitude = report.value?.attitude
  const { sags, ride = [] } = report.value ?? {}
  // What was read since comes before what would be elsewhere.
  const read = ride.map(({ axle, change }) => change && `${axle === 'front' ? 'Front' : 'Rear'}. ${change.words}`).find(Boolean) || sags?.lead
  const hotAndHigh = worst?.words ? `${worst.label}: ${worst.words.charAt(0).toLowerCase()}${worst.words.slice(1)}` : 'Hot and high: being worked out.'
  return (
    <Frame room="check" name="Check">
      <div class="lead">
        <Pair ends={['front', 'rear']} />
        <p class="check-answer" data-answer="check" data-stale={reports.front.value.stale} aria-live="polite">
          {read || (elsewhere ? hotAndHigh : 'Read the sags: front and rear, bike alone and with the rider.')}
        </p>
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
        <Fold place="check" name="hot" title="Hot, high, others" says={summary(HOT_AND_HIGH)} forced={wide.value}>
          <div class="conditions">
            <Conditions end="front" />
            <Conditions end="rear" />
          </div>
        </Fold>
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
