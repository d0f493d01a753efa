import type { ComponentChildren } from 'preact'
import type { FieldPath } from '../../generated/schema.ts'
import { problemAt, stateOf, textOf } from '../../store/fields.ts'
import type { PlaceName } from '../../store/place.ts'
import type { FoldPlan } from '../../store/plan.ts'
import { schema } from '../../store/schema.ts'
import { plain } from '../../store/text.ts'
import { exists } from '../field/Field.tsx'
import { paired, Rows } from '../field/Rows.tsx'
import { Fold } from './Fold.tsx'

/** A fold of the plan: its fields but for those that stand in the open. Nothing where none applies. */
export function FieldFold({ place, plan, shown, lead, children }: { place: PlaceName; plan: FoldPlan; shown: FieldPath[]; lead?: ComponentChildren; children?: ComponentChildren }) {
  const fields = plan.fields.filter((path) => exists(path) && !shown.includes(path))
  if (fields.length === 0 && !(children && plan.fields.some(exists))) return null
  const wrong = fields.find((path) => problemAt(path) !== null)
  return (
    <Fold place={place} name={plan.name} title={plan.title} says={summary(plan.says)} forced={wrong !== undefined}>
      {lead}
      <Rows rows={paired(fields)} />
      {children}
    </Fold>
  )
}

/** The fields' values in a few words; what is assumed says so. */
export function summary(paths: FieldPath[]): string {
  const known = paths.filter(exists).map((path) => ({ text: short(path), assumed: stateOf(path)?.origin === 'assumed' && schema.fields[path].kind === 'quantity' }))
  const words = known.filter(({ text }) => text !== '')
  const assumed = words.some((one) => one.assumed)
  return [words.map(({ text }) => text).join(', '), assumed && 'assumed'].filter(Boolean).join(' ')
}

function short(path: FieldPath): string {
  const field = schema.fields[path]
  const state = stateOf(path)
  if (field.kind === 'choice') {
    const label = field.choices.find((one) => one.key === (textOf(path) || state?.value))?.label ?? ''
    return label.charAt(0).toLowerCase() + label.slice(1)
  }
  if (typeof state?.value !== 'number') return ''
  return `${plain(state.value)}${state.unit === '°' ? '' : ' '}${state.unit === '1' ? '' : state.unit}`.trim()
}
