import { builtOf, lookedAt } from '../../store/looked.ts'
import { side } from '../../store/place.ts'
import { Caution } from '../caution/Caution.tsx'
import { Steppers, type Turned } from '../field/Steppers.tsx'
import { Linkage } from '../linkage/Linkage.tsx'
import { LinkagePicture } from '../linkage/Picture.tsx'
import { AxlePlace } from '../shell/AxlePlace.tsx'
import { later } from '../shell/later.tsx'

const Damping = later(() => import('../damping/Damping.tsx').then(({ Damping }) => Damping))
const DampingTables = later(() => import('../damping/Damping.tsx').then(({ DampingTables }) => DampingTables))
const ForceChart = later(() => import('../chart/ForceChart.tsx').then(({ ForceChart }) => ForceChart))

const TURNED: Turned[] = [
  { path: 'rear.tried_preload', label: 'Preload', of: (chosen) => chosen.preload.value },
  { path: 'rear.tried_rate', label: 'Spring', of: (chosen) => chosen.rate.value },
]

export function Rear() {
  return (
    <AxlePlace
      end="rear"
      picture={<Picture />}
      leadsFold={{ damping: <Damping end="rear" /> }}
      inFold={{
        springs: <Caution keys={['stand', 'shock']} />,
        linkage: <Linkage />,
        shock: <Caution keys={['shock']} />,
        damping: (
          <>
            <Caution keys={['shock']} />
            <DampingTables end="rear" />
          </>
        ),
      }}
    />
  )
}

/** The side view where the linkage's points are being read; the force of the setup that is looked at, under what is turned. */
function Picture() {
  const looked = lookedAt('rear') ?? undefined
  return (
    <>
      <LinkagePicture />
      {side.value === 'answer' && <Steppers end="rear" turned={TURNED} />}
      <ForceChart end="rear" looked={looked} built={builtOf('rear')?.curve ?? null} />
    </>
  )
}
