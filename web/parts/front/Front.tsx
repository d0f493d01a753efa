import { report, reports } from '../../store/index.ts'
import { sized } from '../../store/looked.ts'
import { side } from '../../store/place.ts'
import { Braking } from '../braking/Braking.tsx'
import { Caution } from '../caution/Caution.tsx'
import { Stepper, Steppers, type Turned } from '../field/Steppers.tsx'
import { goToPart } from '../leg/fields.ts'
import { LaterLeg } from '../leg/later.ts'
import { AxlePlace } from '../shell/AxlePlace.tsx'

const PRESSURE: Turned = { path: 'front.tried_pressure', label: 'Pressure', of: (chosen) => chosen.pressure?.value }
const PRELOAD: Turned = { path: 'front.tried_preload', label: 'Preload', of: (chosen) => chosen.preload.value }
const GAP: Turned = { path: 'front.tried_gap', label: 'Gap', of: (chosen) => chosen.gap?.value }
const SPRINGS: Turned = { path: 'front.tried_rate', label: 'Springs', of: (chosen) => chosen.rate.value }

export function Front() {
  return (
    <AxlePlace
      end="front"
      picture={<Picture />}
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

/** The leg to scale with its force; what is turned stands beside the part that it turns, at the answer. */
function Picture() {
  const done = sized(reports.front.value.report)
  if (!done) return null
  const pumped = report.value?.fields['front.tried_pressure']?.applies
  const looked = side.value === 'built'
  const { built } = done
  const shown = built?.curve && built.section ? { curve: built.curve, section: built.section, looked } : null
  if (looked && shown) return <LaterLeg onPart={goToPart} built={shown} />
  // Where no leg is drawn there is nothing to stand beside.
  if (!done.section || pumped)
    return (
      <>
        <Steppers end="front" turned={pumped ? [PRESSURE, GAP] : [PRELOAD, GAP, SPRINGS]} />
        <LaterLeg onPart={goToPart} built={shown} />
      </>
    )
  const beside = (turned: Turned) => <Stepper end="front" {...turned} />
  return <LaterLeg onPart={goToPart} built={shown} preload={beside(PRELOAD)} gap={beside(GAP)} springs={beside(SPRINGS)} />
}
