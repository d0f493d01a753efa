import { useSignal } from '@preact/signals'
import { helpOf } from '../../store/help.ts'
import { start } from '../../store/jobs.ts'
import { schema, unitsOf } from '../../store/schema.ts'
import { apart, together } from '../../store/text.ts'
import { offered } from '../../store/units.ts'
import { go } from '../../store/place.ts'
import { useArrival } from './arrival.ts'
import './start.css'

const MASS = schema.fields['rider.mass']

/** A job of one's own from two answers; all else starts as assumed. */
export function Start({ done }: { done: () => void }) {
  const use = useSignal('')
  const rider = useSignal('')
  const unit = useSignal(MASS.unit)
  const wrong = useSignal('')
  const busy = useSignal(false)
  const title = useArrival<HTMLHeadingElement>()

  const submit = async (event: SubmitEvent) => {
    event.preventDefault()
    wrong.value = use.value === '' ? 'Say what kind of riding.' : rider.value.trim() === '' ? 'Say what the rider weighs in kit.' : ''
    if (wrong.value) return
    busy.value = true
    wrong.value = (await start(use.value, together(rider.value, unit.value))) ?? ''
    busy.value = false
    if (wrong.value) return
    done()
    go('bike', { top: true, side: 'answer' })
  }
  const units = unitsOf(MASS)
  const plain = rider.value.trim() === '' || apart(together(rider.value, unit.value), units).unit !== ''
  return (
    <form class="sheet" aria-labelledby="start-name" onSubmit={(event) => void submit(event)} noValidate>
      <h2 id="start-name" ref={title} tabIndex={-1}>
        New job
      </h2>
      <p>Two answers are enough to begin. Everything else is assumed from common practice and marked so, until you measure it.</p>
      <label class="ask">
        <span>Riding</span>
        <select value={use.value} onChange={(event) => ((use.value = event.currentTarget.value), (wrong.value = ''))}>
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
        <label for="start-rider">Rider in full kit</label>
        <input
          id="start-rider"
          type="text"
          inputMode="decimal"
          autocomplete="off"
          value={rider.value}
          aria-invalid={wrong.value !== '' && use.value !== ''}
          aria-describedby="start-how start-wrong"
          onInput={(event) => ((rider.value = event.currentTarget.value), (wrong.value = ''))}
        />
        <span class="boxes" role="group" aria-label="Unit">
          {offered(MASS).map((one) => (
            <button key={one} type="button" class={plain && unit.value === one ? 'on' : ''} aria-pressed={plain && unit.value === one} onPointerDown={(event) => event.preventDefault()} onClick={() => (unit.value = one)}>
              {one}
            </button>
          ))}
        </span>
      </div>
      <p class="quiet" id="start-how">
        {helpOf('rider.mass')}
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
