/** What the card's figures rest on: every reading that applies, with its origin. */
import type { FieldState, Report } from '../../core/report.ts'
import type { FieldPath } from '../../generated/schema.ts'
import { type FieldSchema, schema } from '../../store/schema.ts'
import { spreadText } from '../field/words.ts'
import { plain } from '../../store/text.ts'

export interface Rest {
  label: string
  text: string
  band: string
  state: FieldState
}

/** Where it is bled and ridden: told as the card's conditions. */
export const CONDITIONS: FieldPath[] = ['place.bled_altitude', 'place.bled_pressure', 'place.ridden_altitude', 'place.ridden_pressure']

// What is built, and the rider, stand in the card's head and table with their own lines.
const OWN_LINES: FieldPath[] = ['rider.mass', ...CONDITIONS, 'front.rate', 'front.preload', 'front.gap_left', 'front.gap_right', 'rear.rate', 'rear.preload']

// Results that were read are no readings that the answer is worked out from, nor is what is known of the dampers: Found tells them.
const RESULTS = ['sags found', 'after the ride', 'bench push', 'damping', 'gap while filling', 'hours and service']

/** Quantities that apply and are known, main or entered ones first in full; the others are assumed in passing. */
export function restsOn(report: Report): { full: Rest[]; besides: Rest[] } {
  const mine = ({ path, part }: FieldSchema) => !/\.(tried|built)_/.test(path) && !OWN_LINES.includes(path) && !RESULTS.includes(part)
  const all = Object.values(schema.fields).filter(mine)
  const inFull = (field: FieldSchema) => field.main || report.fields[field.path]?.entered
  const rests = (fields: FieldSchema[]) => fields.map(({ path }) => restAt(report, path)).filter((rest) => rest !== null)
  return { full: rests(all.filter(inFull)), besides: rests(all.filter((field) => !inFull(field))) }
}

/** A field's line on the card; nothing where it does not apply or is not known. */
export function restAt(report: Report, path: FieldPath): Rest | null {
  const field = schema.fields[path]
  const state = report.fields[path]
  return field.kind === 'quantity' && state?.applies && typeof state.value === 'number' ? restOf(field, state) : null
}

function restOf(field: FieldSchema, state: FieldState): Rest {
  const end = field.path.startsWith('rear.') ? 'Rear: ' : ''
  const unit = state.unit === '1' ? '' : state.unit
  const text = `${plain(state.value as number)}${unit === '°' ? '' : ' '}${unit}`.trim()
  const label = end ? end + field.label[0]!.toLowerCase() + field.label.slice(1) : field.label
  return { label, text, band: spreadText(state), state }
}
