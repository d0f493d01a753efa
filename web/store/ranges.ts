/** The trade's ranges as declared by the core, for one kind of riding. */
import declared from '../generated/ranges.json'
import type { Use } from '../generated/schema.ts'

/** A row of practice: low, high, typical and confidence by use (null where it is not practised), or for every use. */
type DeclaredCell = [number, number, number, string]
interface DeclaredRange {
  unit: string
  by_use?: Record<Use, DeclaredCell | null>
  always?: DeclaredCell
}

export interface RangeRow {
  name: string
  unit: string
  confidence: string
  low: number
  high: number
  typical: number
}

export function rangesFor(use: Use): RangeRow[] {
  return Object.entries(declared as unknown as Record<string, DeclaredRange>).flatMap(([name, { unit, by_use, always }]) => {
    const found = always ?? by_use?.[use]
    if (!found) return []
    const [low, high, typical, confidence] = found
    return [{ name, unit, confidence, low, high, typical }]
  })
}
