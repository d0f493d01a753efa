import type { Report } from '../../core/report.ts'
import { withUnit } from '../figure/text.ts'
import { TravelRule } from '../figure/TravelRule.tsx'

type End = NonNullable<Report['sags']>['ends'][number]

/** A bracket where each sag was expected, a mark where it was found. */
export function SagRule({ end }: { end: End }) {
  const said = end.rows.map((row) => `${row.label} found at ${withUnit(row.found)}, expected at ${withUnit(row.expected)}`).join('; ')
  const spots = end.rows.map(({ label, expected, found, believed }) => {
    const half = expected.plus_minus_95 ?? 0
    return {
      mark: label === 'free sag' ? ('free' as const) : ('rider' as const),
      at: found.value,
      low: expected.value - half,
      high: expected.value + half,
      leftOut: !believed,
    }
  })
  return <TravelRule travel={end.travel} spots={spots} said={said} />
}
