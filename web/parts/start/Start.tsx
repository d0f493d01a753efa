import { useSignal } from '@preact/signals'
import { start } from '../../store/jobs.ts'
import { schema, unitsOf } from '../../store/schema.ts'
import { apart, nextUnit, together } from '../../store/text.ts'
import './start.css'

const MASS = schema.fields['rider.mass']

/** A job of one's own from two answers; all else starts as assumed. */
export function Start({ done }: { done: () => void }) {
  const use = useSignal('')
  const rider = useSignal('')
  const unit = useSignal(MASS.unit)
  const wrong = useSignal('')
  const busy = useSignal(false)

  const submit = async (event: SubmitEvent) => {
    event.preventDefault()
    wrong.value = use.value === '' ? 'Say what kind of riding.' : rider.value.trim() === '' ? 'Say what the rider weighs, kitted.' : ''
    if (wrong.value) return
    busy.value = true
    wrong.value = (await start(use.value, together(rider.value, unit.value))) ?? ''
    busy.value = false
    if (!wrong.value) done()
  }
  const units = unitsOf(MASS)
  const plain = rider.value.trim() === '' || apart(together(rider.value, unit.value), units).unit !== ''
  return (
    <form class="sheet" aria-labelledby="start-name" onSubmit={(event) => void submit(event)} noValidate>
      <h2 id="start-name" tabIndex={-1}>
        Start your own
      </h2>
      <p>Two answers are enough to begin. Everything else is assumed from common practice and marked so, until you measure it.</p>
      <label class="ask">
        <span>Riding</span>
        <select value={use.value} onChange={(event) => (use.value = event.currentTarget.value)}>
          <option value="" disabled>
            Choose
          </option>
          {schema.uses.map(({ key, label }) => (
            <option key={key} value={key}>
              {label}
            </option>
          ))}
        </select>
      </label>
      <div class="ask">
        <label for="start-rider">Rider, kitted</label>
        <input
          id="start-rider"
          type="text"
          inputMode="decimal"
          autocomplete="off"
          value={rider.value}
          aria-invalid={wrong.value !== '' && use.value !== ''}
          aria-describedby="start-how start-wrong"
          onInput={(event) => (rider.value = event.currentTarget.value)}
        />
        <button
          type="button"
          aria-label={`Unit: ${unit.value}. Change it to ${nextUnit(unit.value, units)}`}
          onPointerDown={(event) => event.preventDefault()}
          onClick={() => (unit.value = nextUnit(unit.value, units))}
        >
          {plain ? unit.value : '·'}
        </button>
      </div>
      <p class="quiet" id="start-how">
        {MASS.how}
      </p>
      <p class="attend" id="start-wrong" role="alert">
        {wrong.value}
      </p>
      <div class="buttons">
        <button type="button" onClick={done}>
          Not now
        </button>
        <button type="submit" class="filled" disabled={busy.value}>
          Work it out
        </button>
      </div>
    </form>
  )
}
