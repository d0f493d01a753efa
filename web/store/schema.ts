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
  end: End | 'both'
  typed: Origin
  how: string
  /** The path that an entry in % is a part of, or nothing. */
  percent_of: FieldPath | ''
}

interface Schema {
  parts: Part[]
  origins: Origin[]
  uses: { key: Use; label: string; posture: string }[]
  units: Record<Dimension, string[]>
  fields: Record<FieldPath, FieldSchema>
  ranges: Record<string, DeclaredRange>
}

/** A row of practice: low, high, typical and confidence by use (null where it is not practised), or for every use. */
type DeclaredCell = [number, number, number, string]
export interface DeclaredRange {
  unit: string
  by_use?: Record<Use, DeclaredCell | null>
  always?: DeclaredCell
}

export const schema = plain as unknown as Schema

export const unitsOf = (field: FieldSchema): string[] => {
  const units = field.dimension ? schema.units[field.dimension] : []
  return field.percent_of ? [...units, '%'] : units
}

/** The fields of a part in the order of the job: what is tried stands apart, what the bike is compared with comes last. */
export function fieldsOf(part: Part): FieldSchema[] {
  const all = Object.values(schema.fields).filter((field) => field.part === part && !field.path.includes('.tried_'))
  const yardstick = (field: FieldSchema) => field.path.startsWith('standard.')
  return [...all.filter((field) => !yardstick(field)), ...all.filter(yardstick)]
}
