import type { Origin } from '../../generated/schema.ts'
import type { Rest } from './rests.ts'

/** A value over its origin's line; an assumed one says so in words too. */
export function Lined({ text, origin }: { text: string; origin: Origin | null }) {
  return (
    <>
      <span class={origin ?? ''}>{text}</span>
      {origin === 'assumed' && ' assumed'}
    </>
  )
}

/** A reading with its label, value, line and +/-. */
export function Reading({ rest }: { rest: Rest }) {
  return (
    <>
      <span class="reading-label">{rest.label} </span>
      <span class="reading-value">
        <Lined text={rest.text} origin={rest.state.origin} /> {rest.band}
      </span>
    </>
  )
}
