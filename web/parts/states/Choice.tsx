/** Which state of the cartridge is looked at and which lies over it; and the figures of both at the stroke that is shown. */
import type { Quantity, StateLooked } from '../../core/report.ts'
import { report } from '../../store/index.ts'
import { lookAtStates, states } from '../../store/place.ts'
import { stateSeen, statesSaid, tapped } from '../../store/states.ts'
import { between } from '../chart/geometry.ts'
import { number, numberText } from '../figure/text.ts'
import { strokeShown } from '../leg/useStroke.ts'
import '../figure/plaintable.css'
import './states.css'

export function StateChoice() {
  const told = statesSaid()
  const said = told?.said
  const chosen = stateSeen(0)
  const plain = report.value?.states?.rows.find((row) => row.state === chosen?.state)?.plain
  return (
    <section class="states" aria-label="States of this cartridge" data-looked={states.value.join(', ')} data-old={told?.old ?? true}>
      {said === undefined && <p class="quiet">They are being worked out.</p>}
      {typeof said === 'string' && <p class="attend">{said}</p>}
      {said && typeof said !== 'string' && said.problem && <p class="attend">{said.problem}</p>}
      {said && typeof said !== 'string' && !chosen && !said.problem && <p class="attend">This fork cannot be in that state. Choose another.</p>}
      {said && typeof said !== 'string' && <Chips all={said.states} />}
      {plain && <p>{plain}</p>}
    </section>
  )
}

function Chips({ all }: { all: readonly StateLooked[] }) {
  const [now, over] = states.value
  return (
    <>
      <div class="states-chips" role="group" aria-label="State looked at; the one before it lies over it, dashed">
        {all.map(({ state, label }) => (
          <button key={state} type="button" aria-pressed={state === now} class={state === over ? 'dashed' : ''} onClick={() => lookAtStates(tapped(states.value, state))}>
            {label}
            {state === over && <span class="aside">, laid over it</span>}
          </button>
        ))}
      </div>
      <p class="quiet">Tap one to look at it: the one before stays over it, dashed. Tap it again to see it alone.</p>
    </>
  )
}

/** A value along the curve; none where it has none beside it. */
function along(one: StateLooked, values: readonly (number | null)[], stroke: number): number | null {
  const known = values.map((value) => value ?? Number.NaN)
  const read = between(one.curve.stroke, known, stroke)
  return Number.isNaN(read) ? null : read
}

type Row = [name: string, decimals: number, of: (one: StateLooked, stroke: number) => number | null]

const HERE: Row[] = [
  ['Force, kN', 2, (one, stroke) => along(one, one.curve.working, stroke)],
  ['Gas, % of it', 0, (one, stroke) => along(one, one.gas_share, stroke)],
  ['Behind damper’s oil, bar', 1, (one, stroke) => along(one, one.behind, stroke)],
]

const FIXED: [name: string, of: (one: StateLooked) => Quantity][] = [
  ['Free sag, mm', (one) => one.setup.free_sag],
  ['Rider sag, mm', (one) => one.setup.rider_sag],
  ['Full travel, kN', (one) => one.setup.end_force],
]

/** Both states at the stroke that is shown, and what they come to. */
export function StateFigures() {
  const [now, over] = [stateSeen(0), stateSeen(1)]
  if (!now) return null
  const last = Math.min(...[now, over].flatMap((one) => (one ? [one.curve.stroke.at(-1)!] : [])))
  const stroke = strokeShown(last)
  const shown = over ? [now, over] : [now]
  return (
    <table class="plain-table lined" data-table="looked">
      <caption class="aside">The state looked at, and the one laid over it</caption>
      <thead>
        <tr>
          <th scope="col">At {Math.round(stroke)} mm</th>
          {shown.map((one, i) => (
            <th key={one.state} scope="col">
              {i ? '- - ' : ''}
              {one.label}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {HERE.map(([name, decimals, of]) => (
          <tr key={name}>
            <th scope="row">{name}</th>
            {shown.map((one) => {
              const value = of(one, stroke)
              return <td key={one.state}>{value === null ? '–' : numberText(value, decimals)}</td>
            })}
          </tr>
        ))}
        {FIXED.map(([name, of]) => (
          <tr key={name}>
            <th scope="row">{name}</th>
            {shown.map((one) => (
              <td key={one.state}>{number(of(one))}</td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  )
}
