import type { Check } from '../../core/report.ts'
import { tick } from '../../store/actions.ts'
import { madeOn } from '../../store/ticks.ts'
import './bench.css'

/** Checks to tick with a thumb; they stay ticked with the day on which each was made. */
export function Checks({ checks }: { checks: Check[] }) {
  return (
    <ul class="ticks">
      {checks.map(({ key, words }) => (
        <li key={key}>
          <label>
            <input type="checkbox" name={`tick ${key}`} checked={madeOn(key) !== ''} onChange={(event) => tick(key, event.currentTarget.checked)} />
            <span>{words}</span>
            <small class="quiet">{madeOn(key)}</small>
          </label>
        </li>
      ))}
    </ul>
  )
}
