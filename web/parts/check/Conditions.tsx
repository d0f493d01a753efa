import type { End, Place } from '../../core/report.ts'
import { reports } from '../../store/index.ts'
import { type Kind, lookedAt } from '../../store/looked.ts'
import { Figure } from '../figure/Figure.tsx'

const WORDS: Record<Kind, string> = { answer: 'as recommended', try: 'as recommended', built: 'as built', 'as found': 'as found', state: 'in one state' }
const NAMES = { front: 'Front', rear: 'Rear' } as const

/** The table of one end: a row a condition. Empty until the core has worked it out. */
export function Conditions({ end }: { end: End }) {
  const { stale } = reports[end].value
  const looked = lookedAt(end)
  if (!looked || looked.places.length === 0) return null
  // The figures are newer than these rows until their bands are in.
  const waiting = looked.report.state === 'ok' && looked.report.sure === null
  const name = `${NAMES[end]}, ${WORDS[looked.kind]}`
  return (
    <div class="table-room" role="region" tabIndex={0} aria-label={`${name}, conditions`}>
      <table class="places" data-places={end} data-stale={stale}>
        <caption>
          {name}
          {waiting && <small> of the setup before, being worked out again</small>}
        </caption>
        <thead>
          <tr>
            <td />
            <th scope="col">free sag mm</th>
            <th scope="col">rider sag mm</th>
            <th scope="col">full travel × load</th>
          </tr>
        </thead>
        <tbody>
          {looked.places.map((row) => (
            <Row key={row.key} row={row} />
          ))}
        </tbody>
      </table>
    </div>
  )
}

/** Two lines a condition: its figures, and under them what they come to, over the whole width so that nothing runs off a phone. */
function Row({ row }: { row: Place }) {
  const label = row.key === 'as built' ? 'At home' : row.label
  if (row.problem !== null) {
    return (
      <tr class="places-none">
        <th scope="row">{label}</th>
        <td colSpan={3}>{row.problem}</td>
      </tr>
    )
  }
  return (
    <>
      <tr>
        <th scope="row">{label}</th>
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
