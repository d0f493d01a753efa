import type { End, Place } from '../../core/report.ts'
import { reports } from '../../store/index.ts'
import { Figure } from '../figure/Figure.tsx'
import { number } from '../figure/told.ts'

const NAMES = { front: 'Front, as built', rear: 'Rear, as built' } as const

/** The table of one end: a row a condition. Empty until the core has worked it out. */
export function Places({ end }: { end: End }) {
  const { report, stale } = reports[end].value
  if (!report || report.state === 'refused' || report.elsewhere.length === 0) return null
  // The figures are newer than these rows until their bands are in.
  const waiting = report.state === 'ok' && report.sure === null
  const gap = report.elsewhere.some((row) => row.problem === null && row.acts_like !== null)
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
            {gap && <th scope="col">like gap, mm</th>}
          </tr>
        </thead>
        <tbody>
          {report.elsewhere.map((row) => (
            <Row key={row.key} row={row} gap={gap} />
          ))}
        </tbody>
      </table>
    </div>
  )
}

function Row({ row, gap }: { row: Place; gap: boolean }) {
  if (row.problem !== null) {
    return (
      <tr class="places-none">
        <th scope="row">{row.label}</th>
        <td colSpan={gap ? 4 : 3}>{row.problem}</td>
      </tr>
    )
  }
  return (
    <tr>
      <th scope="row">{row.label}</th>
      <td>
        <Figure of={row.free_sag} unit="" />
      </td>
      <td>
        <Figure of={row.rider_sag} unit="" />
      </td>
      <td>
        <Figure of={row.end_multiple} unit="" />
      </td>
      {gap && (
        <td>
          {row.acts_like ? signed(number(row.acts_like)) : ''}
          {row.restoring && <small> set {number(row.restoring)}</small>}
        </td>
      )}
    </tr>
  )
}

const signed = (text: string): string => (text === '0' || text.startsWith('−') ? text : `+${text}`)
