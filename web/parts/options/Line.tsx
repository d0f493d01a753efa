import { useSignal } from '@preact/signals'
import { useRef } from 'preact/hooks'
import { report } from '../../store/index.ts'

interface Props {
  /** Where it stands, as the core names the place of what it refuses. */
  path: string
  label: string
  value: string
  write: (text: string) => void
  kind?: 'number' | 'line' | 'text'
  unit?: string
  /** What a phone's keypad cannot type needs letters. */
  letters?: boolean
}

// As at every field: what is half typed is not refused yet.
const REST = 700

/** One entry of the offer, and what is wrong with it. */
export function Line({ path, label, value, write, kind = 'line', unit = '', letters = false }: Props) {
  const resting = useSignal(true)
  const timer = useRef<ReturnType<typeof setTimeout>>(undefined)
  const problem = resting.value ? report.value?.offer?.problems.find((one) => one.path === path) : undefined
  const id = path.replaceAll(/\W+/g, '-')
  const typed = (text: string) => {
    resting.value = false
    clearTimeout(timer.current)
    timer.current = setTimeout(() => (resting.value = true), REST)
    write(text)
  }
  const common = {
    id,
    name: path,
    value,
    autocomplete: 'off',
    'aria-invalid': problem !== undefined,
    'aria-describedby': problem && `${id}-problem`,
    onBlur: () => (resting.value = true),
  }
  return (
    <div class={`offer-line of-${kind === 'number' && !unit ? 'line' : kind}`}>
      <label for={id}>{label}</label>
      {kind === 'text' ? (
        <textarea {...common} rows={2} maxLength={300} onInput={(event) => typed(event.currentTarget.value)} />
      ) : (
        <input {...common} type="text" inputMode={kind === 'number' && !letters ? 'decimal' : 'text'} maxLength={kind === 'number' ? 40 : 300} onInput={(event) => typed(event.currentTarget.value)} />
      )}
      {unit && <span class="unit">{unit}</span>}
      {problem && (
        <div class="offer-problem" id={`${id}-problem`} role="status">
          <p class="attend">{[problem.message, problem.limit, problem.way_out].filter(Boolean).join(' ')}</p>
          <span class="boxes">
            {problem.readings.map((reading) => (
              <button key={reading} type="button" onClick={() => write(reading)}>
                It is {reading}
              </button>
            ))}
          </span>
        </div>
      )}
    </div>
  )
}

/** An entry as text. */
export const shown = (value: string | number | null | undefined): string => String(value ?? '')
