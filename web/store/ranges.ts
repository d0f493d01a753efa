/** The trade's ranges as declared by the core, for one kind of riding. */
import type { Use } from '../generated/schema.ts'
import { schema } from './schema.ts'

export interface RangeRow {
  name: string
  unit: string
  confidence: string
  low: number
  high: number
  typical: number
}

export function rangesFor(use: Use): RangeRow[] {
  return Object.entries(schema.ranges).flatMap(([name, { unit, by_use, always }]) => {
    const found = always ?? by_use?.[use]
    if (!found) return []
    const [low, high, typical, confidence] = found
    return [{ name, unit, confidence, low, high, typical }]
  })
}
