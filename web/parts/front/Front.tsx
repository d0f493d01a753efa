import { report } from '../../store/index.ts'
import { Braking } from '../braking/Braking.tsx'
import { Caution } from '../caution/Caution.tsx'
import { AxlePlace } from '../shell/AxlePlace.tsx'
import { later } from '../shell/later.tsx'
import { Steppers, type Turned } from '../field/Steppers.tsx'

// The answer stands before its picture: that is the larger part.
const ForceChart = later(() => import('../chart/ForceChart.tsx').then(({ ForceChart }) => ForceChart))

const PUMPED: Turned[] = [
  { path: 'front.tried_pressure', label: 'Pressure', of: (chosen) => chosen.pressure?.value },
  { path: 'front.tried_gap', label: 'Gap', of: (chosen) => chosen.gap?.value },
]
const TURNED: Turned[] = [
  { path: 'front.tried_preload', label: 'Preload', of: (chosen) => chosen.preload.value },
  { path: 'front.tried_gap', label: 'Gap', of: (chosen) => chosen.gap?.value },
  { path: 'front.tried_rate', label: 'Springs', of: (chosen) => chosen.rate.value },
]

export function Front() {
  const pumped = report.value?.fields['front.tried_pressure']?.applies
  return (
    <AxlePlace
      end="front"
      steppers={<Steppers end="front" turned={pumped ? PUMPED : TURNED} />}
      picture={<ForceChart end="front" />}
      inFold={{
        springs: <Caution keys={['stand', 'springs']} />,
        air: <Caution keys={['gas']} />,
        cartridge: <Caution keys={['gas']} />,
        oil: <Caution keys={['gas']} />,
      }}
      after={<Braking />}
    />
  )
}
