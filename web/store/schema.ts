/** The declared fields, as the core exports them. The page repeats none of it. */
import plain from '../generated/schema.json'
import type { Dimension, FieldPath, Origin, Part, Use } from '../generated/schema.ts'
import type { End } from '../core/report.ts'

export interface FieldSchema {
  path: FieldPath
  label: string
  part: Part
  kind: 'quantity' | 'choice' | 'rates' | 'pairs'
  dimension: Dimension | ''
  unit: string
  low: number
  high: number
  step: number
  decimals: number
  plus_minus: number
  choices: { key: string; label: string }[]
  main: boolean
  optional: boolean
  end: End | 'both' | 'neither'
  typed: Origin
  /** The path that an entry in % is a part of, or nothing. */
  percent_of: FieldPath | ''
}

interface Schema {
  /** Bytes; a longer file is no job. */
  longest_file: number
  parts: Part[]
  origins: Origin[]
  /** What the note of a reading begins with that the customer took. */
  customers: string
  uses: { key: Use; label: string; posture: string }[]
  units: Record<Dimension, string[]>
  fields: Record<FieldPath, FieldSchema>
}

export const schema = plain as unknown as Schema

export const unitsOf = (field: FieldSchema): string[] => {
  const units = field.dimension ? schema.units[field.dimension] : []
  return field.percent_of ? [...units, '%'] : units
}
