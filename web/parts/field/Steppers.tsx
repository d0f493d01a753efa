import type { End, Setup } from '../../core/report.ts'
import type { FieldPath } from '../../generated/schema.ts'
import { clear, type } from '../../store/actions.ts'
import { problemAt, textOf } from '../../store/fields.ts'
import { reports } from '../../store/index.ts'
import { schema, stepDecimals } from '../../store/schema.ts'
import { apart, figure } from '../../store/text.ts'
import { Problem } from './Problem.tsx'
import './steppers.css'

/** What is turned at the bench, by the step the trade uses; it starts from the answer and is shown beside it. */
export interface Turned {
  path: FieldPath
  label: string
  of: (chosen: Setup) => number | undefined
}

export function Steppers({ end, turned }: { end: End; turned: Turned[] }) {
  return (
    <div class="steppers" role="group" aria-label={`Try, ${end}`}>
      {turned.map((one) => (
        <Stepper key={one.path} end={end} {...one} />
      ))}
    </div>
  )
}

export function Stepper({ end, path, label, of }: Turned & { end: End }) {
  const field = schema.fields[path]
  const { report } = reports[end].value
  const answer = report?.state === 'ok' ? of(report.chosen) : undefined
  const text = textOf(path)
  const { number, unit } = apart(text, [field.unit])
  // Our own steps are in the field's unit; a job file may hold another, and that is not stepped from.
  const at = text === '' ? answer : unit ? Number(number.replace(',', '.').replace('−', '-')) : undefined
  const problem = problemAt(path)
  const written = (value: number) => figure(value, field.decimals, stepDecimals(field))

  const turn = (by: number) => {
    const next = at! + by * field.step
    // Back on the answer is the answer: nothing is tried then.
    if (answer !== undefined && written(next) === written(answer)) clear(path)
    else type(path, `${written(next)} ${field.unit}`, 'stated')
  }
  const off = (by: number) => at === undefined || at + by * field.step < field.low - 1e-9 || at + by * field.step > field.high + 1e-9
  return (
    <div class={problem ? 'stepper refused' : 'stepper'}>
      <span>{label}</span>
      <button type="button" aria-label={`${label}: ${field.step} ${field.unit} less`} disabled={off(-1)} onClick={() => turn(-1)}>
        <Sign />
      </button>
      <output class={text === '' ? '' : 'tried-now'} name={path}>
        <b>{at === undefined ? text || '–' : written(at)}</b> {at === undefined ? '' : field.unit}
        {text !== '' && answer !== undefined && <span class="stepper-answer">answer {written(answer)}</span>}
      </output>
      <button type="button" aria-label={`${label}: ${field.step} ${field.unit} more`} disabled={off(1)} onClick={() => turn(1)}>
        <Sign plus />
      </button>
      <Problem field={field} problem={problem} />
    </div>
  )
}

function Sign({ plus = false }: { plus?: boolean }) {
  return (
    <svg width="20" height="20" aria-hidden="true">
      <path d={plus ? 'M2 10H18M10 2V18' : 'M2 10H18'} stroke="currentColor" stroke-width="2.4" />
    </svg>
  )
}
