import { report } from '../../store/index.ts'
import { Answer } from '../answer/Answer.tsx'
import { Candidates } from '../answer/Candidates.tsx'
import { Tried } from '../answer/Tried.tsx'
import { Braking } from '../braking/Braking.tsx'
import { Caution } from '../caution/Caution.tsx'
import { Fields } from '../field/Fields.tsx'
import { Steppers, type Turned } from '../field/Steppers.tsx'

const PUMPED: Turned[] = [
  { path: 'front.tried_pressure', label: 'Pressure', of: (chosen) => chosen.pressure?.value },
  { path: 'front.tried_gap', label: 'Gap', of: (chosen) => chosen.gap?.value },
]
const TURNED: Turned[] = [
  { path: 'front.tried_rate', label: 'Springs', of: (chosen) => chosen.rate.value },
  { path: 'front.tried_preload', label: 'Preload', of: (chosen) => chosen.preload.value },
  { path: 'front.tried_gap', label: 'Gap', of: (chosen) => chosen.gap?.value },
]

export function Springs() {
  const pumped = report.value?.fields['front.tried_pressure']?.applies
  return (
    <section class="part" id="springs" aria-labelledby="springs-name">
      <div class="lead">
        <h2 id="springs-name">Front, springs and sag</h2>
        <Answer end="front" part="springs" />
      </div>
      <div class="why">
        <div>
          <Candidates end="front" />
        </div>
      </div>
      <div class="rest">
        <Steppers end="front" turned={pumped ? PUMPED : TURNED} />
        <Tried end="front" />
        <Braking />
        <Fields part="springs and sag" />
        <Caution keys={['stand', 'springs']} />
      </div>
    </section>
  )
}
