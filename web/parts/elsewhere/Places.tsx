import type { End, Place } from '../../core/report.ts'
import { reports } from '../../store/index.ts'
import { Figure } from '../figure/Figure.tsx'

const NAMES = { front: 'Front, as built', rear: 'Rear, as built' } as const

/** The table of one end: a row a condition. Empty until the core has worked it out. */
export function Places({ end }: { end: End }) {
  const { report, stale } = reports[end].value
  if (!report || report.state === 'refused' || report.elsewhere.length === 0) return null
  // The figures are newer than these rows until their bands are in.
  const waiting = report.state === 'ok' && report.sure === null
  return (
    <div class="table-room" role="region" tabIndex={0} aria-label={`${NAMES[end]}, elsewhere`}>
      <table class="places" data-places={end} data-stale={stale}>
        <caption>
          {NAMES[end]}
          {waiting && <small> of the setup before, being worked out again</small>}
        </caption>
        <thead>
          <tr>
            <td />
            <th scope="col">free sag mm</th>
            <th scope="col">rider sag mm</th>
            <th scope="col">end × load</th>
          </tr>
        </thead>
        <tbody>
          {report.elsewhere.map((row) => (
            <Row key={row.key} row={row} />
          ))}
        </tbody>
      </table>
    </div>
  )
}

/** Two lines a condition: its figures, and under them what they come to, over the whole width so that nothing runs off a phone. */
function Row({ row }: { row: Place }) {
  if (row.problem !== null) {
    return (
      <tr class="places-none">
        <th scope="row">{row.label}</th>
        <td colSpan={3}>{row.problem}</td>
      </tr>
    )
  }
  return (
    <>
      <tr>
        <th scope="row">{row.label}</th>
        {[row.free_sag, row.rider_sag, row.end_multiple].map((figure) => (
          <td key={figure.case}>
            <Figure of={figure} unit="" />
          </td>
        ))}
      </tr>
      {row.words && (
        <tr class="places-words">
          <td colSpan={4}>{row.words}</td>
        </tr>
      )}
    </>
  )
}
