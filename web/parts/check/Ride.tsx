import type { Report } from '../../core/report.ts'
import { report } from '../../store/index.ts'
import './sags.css'

type End = Report['ride'][number]
const NAMES = { front: 'Front', rear: 'Rear' } as const
const SETUPS = { built: 'as built', found: 'as it came in' } as const

/** What the ride says: what to change first, then what held and what did not. Says how to begin while nothing is entered. */
export function Ride() {
  const ride = report.value?.ride ?? []
  if (ride.length === 0) return <p class="quiet">Push the o-rings up before the ride. Afterwards read their marks, and ask the rider for one thing at each end.</p>
  return (
    <div class="sags" data-ride aria-live="polite">
      {ride.map((end) => (
        <section key={end.axle} data-ride-end={end.axle}>
          <h3>
            {NAMES[end.axle]}, {SETUPS[end.of]}
          </h3>
          {end.problem ? <p class="attend">{end.problem}</p> : <Said end={end} />}
        </section>
      ))}
    </div>
  )
}

function Said({ end }: { end: End }) {
  return (
    <>
      {end.change && <p data-ride-first>{end.change.words}</p>}
      {end.change?.target && (
        <>
          <p data-ride-target>{end.change.target.words}</p>
          <a class="sags-refuse" href="#front.end_target">
            Where it is asked for ›
          </a>
        </>
      )}
      {end.missed.length > 0 && (
        <p>
          <b>Did not hold:</b> {end.missed.join(' ')}
        </p>
      )}
      {end.held.length > 0 && (
        <p>
          <b>Held:</b> {end.held.join(' ')}
        </p>
      )}
    </>
  )
}
