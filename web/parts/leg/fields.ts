/** Where the fields of a tapped part stand. */
import type { FieldPath } from '../../generated/schema.ts'
import { report } from '../../store/index.ts'
import type { PartName } from './layout.ts'

/** The first field of each part; of several, the first that the job's kind of fork has. */
const FIELDS: Record<PartName, FieldPath[]> = {
  cap: ['front.cap_volume'],
  gap: ['front.gap_left', 'front.filled_left'],
  springs: ['front.rate', 'front.wire', 'front.spring_kind'],
  oil: ['front.oil_volume'],
  leg: ['front.seal_diameter'],
  cartridge: ['front.cartridge_state', 'front.air'],
  'air spring': ['front.air_pressure', 'front.air'],
}

function fieldOf(part: PartName, applies: (path: FieldPath) => boolean): FieldPath {
  return FIELDS[part].find(applies) ?? FIELDS[part][0]!
}

/** Lead there as any link to a field does: its fold opens, and it takes the hand. */
export function goToPart(part: PartName): void {
  const link = document.createElement('a')
  link.href = `#${fieldOf(part, (path) => report.value?.fields[path]?.applies ?? false)}`
  document.body.append(link)
  link.click()
  link.remove()
}
