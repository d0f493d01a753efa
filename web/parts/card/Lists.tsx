import type { Check, Report } from '../../core/report.ts'
import { madeOn } from '../../store/ticks.ts'

/** Checks as they are ticked, the others to tick on paper: when it goes together, and on the first ride. */
export function Lists({ report }: { report: Report }) {
  return (
    <>
      <div class="card-lists">
        <div>
          <h3>On reassembly</h3>
          <Checks checks={report.reassembly} />
        </div>
        <div>
          <h3>First ride</h3>
          <Checks checks={report.first_ride} />
        </div>
      </div>
      <p class="card-hand">
        Then: front free sag <span class="blank short" /> rider sag <span class="blank short" /> rear free sag <span class="blank short" /> rider sag <span class="blank short" /> mm
      </p>
    </>
  )
}

function Checks({ checks }: { checks: Check[] }) {
  return (
    <ul class="card-checks">
      {checks.map(({ key, words }) => (
        <li key={key} class={madeOn(key) ? 'made' : ''}>
          {words}
          {madeOn(key) && <span class="aside"> (made)</span>}
        </li>
      ))}
    </ul>
  )
}
