/** The declared fields, as the core exports them. The page repeats none of it. */
import plain from '../generated/schema.json'
import type { Dimension, FieldPath, Origin, Part, Use } from '../generated/schema.ts'
import type { End } from '../core/report.ts'

export interface FieldSchema {
  path: FieldPath
  label: string
  part: Part
  kind: 'quantity' | 'choice' | 'rates' | 'pairs' | 'shims'
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

const { common, fields, ...others } = plain as unknown as Omit<Schema, 'fields'> & { common: object; fields: Record<FieldPath, object> }

/** What a field has in common with most is written once, and put back here. */
const whole = Object.entries(fields).map(([path, own]) => [path, { ...common, ...own, path }])

export const schema: Schema = { ...others, fields: Object.fromEntries(whole) as Schema['fields'] }

export const unitsOf = (field: FieldSchema): string[] => {
  const units = field.dimension ? schema.units[field.dimension] : []
  return field.percent_of ? [...units, '%'] : units
}

/** As many decimals as a field is stepped by: springs that are sold 0.2 apart are 4.0, not 4. */
export const stepDecimals = ({ step }: FieldSchema): number => (String(step).split('.')[1] ?? '').length
