import { Caution } from '../caution/Caution.tsx'
import { ForceChart } from '../chart/ForceChart.tsx'
import { Steppers, type Turned } from '../field/Steppers.tsx'
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
      steppers={<Steppers end="rear" turned={TURNED} />}
      picture={<ForceChart end="rear" />}
      inFold={{ springs: <Caution keys={['stand', 'shock']} />, linkage: <Linkage />, shock: <Caution keys={['shock']} /> }}
    />
  )
}
