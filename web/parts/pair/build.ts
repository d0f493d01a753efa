/** Taking a setup over as what was built: an answer, a candidate or a try becomes ordinary entries that can be changed. */
import type { End, Setup } from '../../core/report.ts'
import type { FieldPath } from '../../generated/schema.ts'
import { enter } from '../../store/actions.ts'
import { schema, stepDecimals } from '../../store/schema.ts'
import { figure } from '../../store/text.ts'

type Entries = [path: FieldPath, text: string][]

/** The figures as the page shows them: what a hand would set and write down. */
export function entries(end: End, setup: Setup): Entries {
  const at = (key: string, value: number): [FieldPath, string] => {
    const path = `${end}.built_${key}` as FieldPath
    const field = schema.fields[path]
    return [path, `${figure(value, field.decimals, stepDecimals(field))} ${field.unit}`]
  }
  const gaps: Entries = end === 'front' && setup.gap ? [at('gap_left', setup.gap.value), at('gap_right', setup.gap.value)] : []
  if (setup.pressure) return [at('pressure', setup.pressure.value), ...gaps]
  const rates: Entries = setup.pair ? [at('rate', setup.pair.left.value), at('rate_right', setup.pair.right.value)] : [at('rate', setup.rate.value)]
  return [...rates, at('preload', setup.preload.value), ...gaps]
}

const BUILT: Record<End, FieldPath[]> = {
  front: ['front.built_rate', 'front.built_rate_right', 'front.built_preload', 'front.built_gap_left', 'front.built_gap_right', 'front.built_pressure'],
  rear: ['rear.built_rate', 'rear.built_preload'],
}
const TRIED: Record<End, FieldPath[]> = {
  front: ['front.tried_rate', 'front.tried_preload', 'front.tried_gap', 'front.tried_pressure'],
  rear: ['rear.tried_rate', 'rear.tried_preload'],
}

/** Written down as stated: the plan for the bench. Each becomes measured as it is read back. */
export const build = (end: End, setup: Setup): void => enter(entries(end, setup), [...BUILT[end], ...TRIED[end]])

/** The same of entries that the core has worked out. */
export const buildAs = (end: End, worked: readonly (readonly [FieldPath, string])[]): void =>
  enter(worked.map(([path, text]) => [path, text]), [...BUILT[end], ...TRIED[end]])

export const unbuild = (end: End): void => enter([], BUILT[end])

export const forgetTry = (end: End): void => enter([], TRIED[end])

/** Put a candidate where it can be turned beside the answer. */
export function tryOut(end: End, setup: Setup, gap: boolean): void {
  const as = ([path, text]: [FieldPath, string]): Entries => {
    const tried = path.replace('built_', 'tried_').replace('gap_left', 'gap')
    return tried in schema.fields && (gap || !tried.endsWith('gap')) ? [[tried as FieldPath, text]] : []
  }
  enter(entries(end, setup).flatMap(as), TRIED[end])
}
