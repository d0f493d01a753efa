import type { Report } from '../../core/report.ts'
import { number } from '../figure/text.ts'

const ENDS = { front: 'Front', rear: 'Rear' } as const
const SETUPS = { built: 'as built', found: 'as it came in' } as const

/** Sags as they were read, what the ride said, how the clickers stand; nothing where nothing was read. */
export function Found({ now }: { now: Report }) {
  const sags = now.sags?.ends.filter(({ rows }) => rows.length > 0).map(({ axle, rows }) => `${axle} ${rows.map((row) => `${row.label} ${number(row.found)}`).join(', ')}`) ?? []
  const first = now.ride.flatMap(({ axle, change }) => (change ? [`${ENDS[axle]}. ${change.words}`] : []))
  const clicks = now.damping.flatMap(({ log }) => (log ? [log] : []))
  if (sags.length + first.length + clicks.length === 0) return null
  return (
    <p class="card-note">
      {sags.length > 0 && (
        <>
          <b>Sags found, {SETUPS[now.sags!.of]}</b> {sags.join('; ')} mm.{' '}
        </>
      )}
      {first.length > 0 && (
        <>
          <b>After the ride</b> {first.join(' ')}{' '}
        </>
      )}
      {clicks.length > 0 && (
        <>
          <b>Adjusters</b> {clicks.join(' ')}
        </>
      )}
    </p>
  )
}
