import type { Setup, Sure } from '../../core/report.ts'
import { stepOf } from '../figure/text.ts'
import './howsure.css'

/** More candidates than this are no tally any more; the words tell their span. */
const TALLIED = 4

/** Certainty counted as on a bench: a tally of ten by candidate. Its line is kept while the runs are worked out. */
export function HowSure({ sure, chosen: setup }: { sure: Sure | null; chosen: Setup }) {
  if (!sure) return <p class="how-sure" />
  // A pressure is read to a gauge's step: what counts is the span it comes out in, not one step.
  if (setup.pressure) return <p class="how-sure">{sure.words}</p>
  const counted = countsOf(sure, setup)
  return (
    <>
      {counted.length <= TALLIED && (
        <p class="how-sure" data-how-sure>
          <span aria-hidden="true">Of 10 runs</span>
          {counted.map(({ rate, of_ten, text }) => (
            <span key={rate} class="tallied" aria-hidden="true">
              <b>{text}</b> <Tally count={of_ten} />
            </span>
          ))}
          {sure.settled && <span class="aside">How sure: {sure.words}</span>}
        </p>
      )}
      {!sure.settled && <p class="unsettled">{sure.words}</p>}
    </>
  )
}

/** Those that runs chose, the answer's first. */
function countsOf(sure: Sure, setup: Setup) {
  const chosen = stepOf(setup).value
  return sure.counts.filter((one) => one.of_ten > 0).sort((a, b) => Number(b.rate === chosen) - Number(a.rate === chosen) || b.count - a.count)
}

/** Strokes in fives, the fifth across the other four. */
export function Tally({ count }: { count: number }) {
  const strokes = Array.from({ length: count }, (_, i) => i)
  const left = (i: number) => Math.floor(i / 5) * 34 + (i % 5) * 6 + 3
  return (
    <svg class="tally" width={count > 0 ? left(count - 1) + 6 : 0} height="20" data-tally={count}>
      {strokes.map((i) => (i % 5 === 4 ? <line key={i} x1={left(i) - 27} x2={left(i) - 1} y1="15" y2="5" /> : <line key={i} x1={left(i)} x2={left(i)} y1="2" y2="18" />))}
    </svg>
  )
}
