import { Answer } from '../answer/Answer.tsx'
import { Candidates } from '../answer/Candidates.tsx'
import { Tried } from '../answer/Tried.tsx'
import { Caution } from '../caution/Caution.tsx'
import { Fields } from '../field/Fields.tsx'
import { Steppers, type Turned } from '../field/Steppers.tsx'
import { Linkage } from '../linkage/Linkage.tsx'
import { LinkagePicture } from '../linkage/Picture.tsx'

const TURNED: Turned[] = [
  { path: 'rear.tried_rate', label: 'Spring', of: (chosen) => chosen.rate.value },
  { path: 'rear.tried_preload', label: 'Preload', of: (chosen) => chosen.preload.value },
]

export function Rear() {
  return (
    <section class="part" id="rear" aria-labelledby="rear-name">
      <div class="lead">
        <h2 id="rear-name">Rear</h2>
        <Answer end="rear" part="rear" />
      </div>
      <div class="why">
        <div>
          <Candidates end="rear" />
        </div>
      </div>
      <div class="rest">
        <Steppers end="rear" turned={TURNED} />
        <Tried end="rear" />
        <LinkagePicture />
        <Fields part="rear" />
        <Linkage />
        <Caution keys={['shock']} />
      </div>
    </section>
  )
}
