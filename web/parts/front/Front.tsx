import { report } from '../../store/index.ts'
import { builtOf, lookedAt } from '../../store/looked.ts'
import { lookAtStates, side } from '../../store/place.ts'
import { AT_FIRST, hasStates, looking, stateSeen } from '../../store/states.ts'
import { Braking } from '../braking/Braking.tsx'
import { Caution } from '../caution/Caution.tsx'
import { Stepper, Steppers, type Turned } from '../field/Steppers.tsx'
import { AxlePlace } from '../shell/AxlePlace.tsx'
import { later } from '../shell/later.tsx'

// The answer stands before its picture: that is the larger part.
const PushVerdict = later(() => import('../push/Push.tsx').then(({ PushVerdict }) => PushVerdict))
const PushFigures = later(() => import('../push/Push.tsx').then(({ PushFigures }) => PushFigures))
const Oil = later(() => import('../oil/Oil.tsx').then(({ Oil }) => Oil))
const Damping = later(() => import('../damping/Damping.tsx').then(({ Damping }) => Damping))
const DampingTables = later(() => import('../damping/Damping.tsx').then(({ DampingTables }) => DampingTables))
const States = later(() => import('../states/States.tsx').then(({ States }) => States))
const Filling = later(() => import('../bench/Filling.tsx').then(({ Filling }) => Filling))
const FillingWords = later(() => import('../bench/Filling.tsx').then(({ FillingWords }) => FillingWords))
const StateChoice = later(() => import('../states/Choice.tsx').then(({ StateChoice }) => StateChoice))
const StateFigures = later(() => import('../states/Choice.tsx').then(({ StateFigures }) => StateFigures))
const Leg = later(() => import('../leg/Leg.tsx').then(({ Leg }) => Leg))

const PRESSURE: Turned = { path: 'front.tried_pressure', label: 'Pressure', of: (chosen) => chosen.pressure?.value }
const PRELOAD: Turned = { path: 'front.tried_preload', label: 'Preload', of: (chosen) => chosen.preload.value }
const GAP: Turned = { path: 'front.tried_gap', label: 'Gap', of: (chosen) => chosen.gap?.value }
const SPRINGS: Turned = { path: 'front.tried_rate', label: 'Springs', of: (chosen) => chosen.rate.value }

export function Front() {
  return (
    <AxlePlace
      end="front"
      picture={<Picture />}
      besideBuilt={<Filling />}
      leadsFold={{ push: <PushVerdict />, damping: <Damping end="front" />, oil: side.value === 'built' ? null : <FillingWords /> }}
      inFold={{
        springs: <Caution keys={['stand', 'springs']} />,
        air: <Caution keys={['gas']} />,
        cartridge: (
          <>
            <Caution keys={['gas']} />
            <ToStates />
          </>
        ),
        damping: <DampingTables end="front" />,
        push: <PushFigures />,
        oil: (
          <>
            <Caution keys={['gas']} />
            <Oil />
          </>
        ),
      }}
      after={<Braking />}
    />
  )
}

/** From the cartridge's fields to what they come to, at the top of the place. */
function ToStates() {
  const go = () => {
    lookAtStates(AT_FIRST)
    scrollTo({ top: 0 })
  }
  return hasStates() ? (
    <button type="button" class="link" onClick={go}>
      Its states, and what replaces a lost charge ›
    </button>
  ) : null
}

/** The leg to scale with its force; what is turned stands beside the part that it turns, at the answer. */
function Picture() {
  const looked = lookedAt('front')
  if (!looked) return null
  if (looking())
    return (
      <>
        <StateChoice />
        {looked.kind === 'state' && <Leg looked={looked} over={stateSeen(1)} />}
        <StateFigures />
        <States />
      </>
    )
  const built = builtOf('front')?.curve ?? null
  if (side.value === 'built') return <Leg looked={looked} built={built} />
  const pumped = report.value?.fields['front.tried_pressure']?.applies
  // Where no leg is drawn there is nothing to stand beside.
  if (!looked.section || pumped)
    return (
      <>
        <Steppers end="front" turned={pumped ? [PRESSURE, GAP] : [PRELOAD, GAP, SPRINGS]} />
        <Leg looked={looked} built={built} />
      </>
    )
  const beside = (turned: Turned) => <Stepper end="front" {...turned} />
  return (
    <div role="group" aria-label="Try, front">
      <Leg looked={looked} built={built} preload={beside(PRELOAD)} gap={beside(GAP)} springs={beside(SPRINGS)} />
    </div>
  )
}
