import type { Origin } from '../../generated/schema.ts'
import type { Rest } from './rests.ts'

/** A value over its origin's line; an assumed one says so in words too, once where several stand together. */
export function Lined({ text, origin, word = true }: { text: string; origin: Origin | null; word?: boolean }) {
  return (
    <>
      <span class={origin ?? ''}>{text}</span>
      {word && origin === 'assumed' && ' assumed'}
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
