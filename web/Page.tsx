import type { Core } from './core/client.ts'
import type { End } from './core/report.ts'
import { whole } from './look/whole.ts'
import type { Offline } from './offline/offline.ts'
import { Bike } from './parts/bike/Bike.tsx'
import { Card } from './parts/card/Card.tsx'
import { Elsewhere } from './parts/elsewhere/Elsewhere.tsx'
import { Oil } from './parts/oil/Oil.tsx'
import { Ranges } from './parts/ranges/Ranges.tsx'
import { Rear } from './parts/rear/Rear.tsx'
import { later } from './parts/shell/later.tsx'
import { Springs } from './parts/springs/Springs.tsx'
import { Status } from './parts/status/Status.tsx'
import { Strip } from './parts/strip/Strip.tsx'
import { Sheet, Top } from './parts/top/Top.tsx'

// The answer stands before its picture: that is the larger part.
const Leg = later(() => import('./parts/leg/Leg.tsx').then(({ Leg }) => Leg))
const ForceChart = later(() => import('./parts/chart/ForceChart.tsx').then(({ ForceChart }) => ForceChart))

/** The parts in the order of the job. At a desk each end's picture stands beside its readings. */
export function Page({ core, offline }: { core: Core; offline: Offline }) {
  return (
    <div class="page">
      <a class="skip" href="#springs">
        To the answer
      </a>
      <div class="bar">
        <Top />
        <Strip />
      </div>
      <Sheet />
      <Status core={core} offline={offline} />
      <main>
        <h1 class="aside">Stanchion: springs and oil height for the rider</h1>
        <div class="end">
          <Bike />
          <Springs />
          {whole.value && (
            <>
              <Picture end="front" />
              <Oil />
            </>
          )}
        </div>
        {whole.value && <Rest />}
      </main>
    </div>
  )
}

function Rest() {
  return (
    <>
      <div class="end">
        <Rear />
        <Picture end="rear" />
      </div>
      <div class="end">
        <Elsewhere />
      </div>
      <Ranges />
      <Card />
    </>
  )
}

function Picture({ end }: { end: End }) {
  return (
    <div class="part picture">
      <div>
        {end === 'front' ? <Leg /> : <ForceChart end={end} />}
      </div>
    </div>
  )
}
