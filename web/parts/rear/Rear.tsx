import { builtOf } from '../../store/looked.ts'
import { side } from '../../store/place.ts'
import { Caution } from '../caution/Caution.tsx'
import { Steppers, type Turned } from '../field/Steppers.tsx'
import { LaterChart } from '../leg/later.ts'
import { Linkage } from '../linkage/Linkage.tsx'
import { AxlePlace } from '../shell/AxlePlace.tsx'

const TURNED: Turned[] = [
  { path: 'rear.tried_preload', label: 'Preload', of: (chosen) => chosen.preload.value },
  { path: 'rear.tried_rate', label: 'Spring', of: (chosen) => chosen.rate.value },
]

export function Rear() {
  return (
    <AxlePlace
      end="rear"
      picture={<Picture />}
      inFold={{ springs: <Caution keys={['stand', 'shock']} />, linkage: <Linkage />, shock: <Caution keys={['shock']} /> }}
    />
  )
}

/** The force of the setup that is looked at, under what is turned. */
function Picture() {
  const built = builtOf('rear')
  return (
    <>
      {side.value === 'answer' && <Steppers end="rear" turned={TURNED} />}
      <LaterChart end="rear" built={built?.curve ?? null} />
    </>
  )
}
