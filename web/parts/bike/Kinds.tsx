import type { FieldPath } from '../../generated/schema.ts'
import { type } from '../../store/actions.ts'
import { stateOf, textOf } from '../../store/fields.ts'
import { schema } from '../../store/schema.ts'
import { DRAWINGS } from './drawings.tsx'

/** What kind of fork and shock: asked first, with a drawing. Fields of the other kinds do not exist until then. */
export function Kinds() {
  return (
    <>
      <Kind path="front.air" title="Kind of fork" />
      <Kind path="rear.shocks" title="Shocks" />
    </>
  )
}

function Kind({ path, title }: { path: FieldPath; title: string }) {
  const { choices, typed } = schema.fields[path]
  const state = stateOf(path)
  const chosen = textOf(path) || String(state?.value ?? '')
  return (
    <section class="kind" id={path} data-kind={path}>
      <h2 id={`${path}-name`}>
        {title} {state?.origin === 'assumed' && <span class="assumed kind-origin">assumed</span>}
      </h2>
      <div class="kinds" role="radiogroup" aria-labelledby={`${path}-name`} onKeyDown={turn}>
        {choices.map(({ key, label }) => (
          <button
            key={key}
            type="button"
            role="radio"
            aria-checked={chosen === key}
            tabIndex={chosen === key || (!choices.some((one) => one.key === chosen) && key === choices[0]!.key) ? 0 : -1}
            class={chosen === key ? 'kind-box chosen' : 'kind-box'}
            onClick={() => type(path, key, typed)}
          >
            <svg width="84" height="108" viewBox="0 0 84 108" aria-hidden="true">
              {DRAWINGS[`${path} ${key}`]}
            </svg>
            <span>
              {chosen === key && '✓ '}
              {label}
            </span>
          </button>
        ))}
      </div>
    </section>
  )
}

/** Arrows choose within a group, as radio buttons do. */
function turn(event: KeyboardEvent): void {
  const by = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 }[event.key]
  if (!by) return
  const all = [...(event.currentTarget as Element).querySelectorAll<HTMLButtonElement>('button')]
  const next = all[(all.indexOf(event.target as HTMLButtonElement) + by + all.length) % all.length]!
  next.click()
  next.focus()
  event.preventDefault()
}
