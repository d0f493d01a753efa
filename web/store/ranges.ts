/** The trade's ranges as declared by the core, for one kind of riding. */
import declared from '../generated/ranges.json'
import type { Use } from '../generated/schema.ts'

/** A row of practice: [low, high, typical] by use (null where it is not practised), or for every use. */
interface DeclaredRange {
  unit: string
  confidence: string
  by_use?: Record<Use, [number, number, number] | null>
  always?: [number, number, number]
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
  return Object.entries(declared as unknown as Record<string, DeclaredRange>).flatMap(([name, { unit, confidence, by_use, always }]) => {
    const found = always ?? by_use?.[use]
    return found ? [{ name, unit, confidence, low: found[0], high: found[1], typical: found[2] }] : []
  })
}
