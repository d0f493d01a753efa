import type { FieldState, Problem } from '../../core/report.ts'
import { type FieldSchema, schema } from '../../store/schema.ts'
import { figure, plain } from '../../store/text.ts'

export const fieldId = (path: string): string => path.replace('.', '-')

/** Names only what is there to be read. */
export function describedBy(id: string, assumed: boolean, within: boolean, refused: boolean): string | undefined {
  const there = [assumed && `${id}-origin`, within && `${id}-usual`, refused && `${id}-problem`].filter(Boolean)
  return there.length > 0 ? there.join(' ') : undefined
}

const withUnit = (text: string, unit: string): string => `${text}${/^[°%]/.test(unit) || !unit ? '' : ' '}${unit}`

/** What stands in for a field where nothing is entered; empty where nothing does. */
export function assumedText(field: FieldSchema, state: FieldState | undefined): string {
  if (!state || state.entered || typeof state.value !== 'number') return ''
  return figure(state.value, Math.max(field.decimals, 2))
}

export function usualWords(state: FieldState | undefined): string {
  const usual = state?.usual
  if (!usual) return ''
  const range = usual.low === usual.high ? plain(usual.low) : `${plain(usual.low)} to ${plain(usual.high)}`
  return `Usually ${withUnit(range, usual.unit)}.`
}

export function limitWords(field: FieldSchema): string {
  return `From ${plain(field.low)} to ${withUnit(plain(field.high), field.unit)}.`
}

/** The +/- of a reading; empty where it has none. */
export function spreadText(state: FieldState | undefined): string {
  return state?.plus_minus_text ?? ''
}

/** What is wrong, for a place where the field's name stands already. */
export function said({ path, message }: Problem): string {
  const name = path ? `${schema.fields[path].label}: ` : ''
  const rest = message.startsWith(name) ? message.slice(name.length) : message
  return rest.charAt(0).toUpperCase() + rest.slice(1)
}
