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
}

interface Schema {
  /** Bytes; a longer file is no job. */
  longest_file: number
  parts: Part[]
  origins: Origin[]
  uses: { key: Use; label: string; posture: string }[]
  units: Record<Dimension, string[]>
  fields: Record<FieldPath, FieldSchema>
  ranges: Record<string, DeclaredRange>
}

/** A row of practice: [low, high, typical] by use (null where it is not practised), or for every use. */
export interface DeclaredRange {
  unit: string
  confidence: string
  by_use?: Record<Use, [number, number, number] | null>
  always?: [number, number, number]
}

export const schema = plain as unknown as Schema

export const unitsOf = (field: FieldSchema): string[] => (field.dimension ? schema.units[field.dimension] : [])

/** The fields of a part in the order of the job: what is tried stands apart, what the bike is compared with comes last. */
export function fieldsOf(part: Part): FieldSchema[] {
  const all = Object.values(schema.fields).filter((field) => field.part === part && !field.path.includes('.tried_'))
  const yardstick = (field: FieldSchema) => field.path.startsWith('standard.')
  return [...all.filter((field) => !yardstick(field)), ...all.filter(yardstick)]
}
