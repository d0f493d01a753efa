import type { ComponentChildren } from 'preact'
import { useEffect, useRef } from 'preact/hooks'
import { whole } from '../../look/whole.ts'
import { fold } from '../../store/folds.ts'
import type { PlaceName } from '../../store/place.ts'
import './fold.css'

interface Props {
  place: PlaceName
  name: string
  title: string
  /** What is inside, in a few words, at the right. */
  says?: ComponentChildren
  /** Something inside needs to be seen. */
  forced?: boolean
  children: ComponentChildren
}

/** A fold of a place. Closed, it is still found by the browser's search, and printed. Opening one leaves the others alone. */
export function Fold({ place, name, title, says, forced = false, children }: Props) {
  const opened = fold(`${place}/${name}`)
  const body = useRef<HTMLDivElement>(null)
  const open = opened.value || forced
  const id = `fold-${place}-${name}`
  useEffect(() => {
    const found = () => (opened.value = true)
    body.current?.addEventListener('beforematch', found)
    return () => body.current?.removeEventListener('beforematch', found)
  }, [])
  return (
    <section class={open ? 'fold open' : 'fold'} id={id}>
      <h2>
        <button type="button" aria-expanded={open} aria-controls={`${id}-body`} onClick={() => (opened.value = !open)}>
          <span class="fold-title">{title}</span>
          <span class="fold-says">{says}</span>
        </button>
      </h2>
      {/* Hidden until found: where a browser does not know that, it is plainly hidden. */}
      <div ref={body} id={`${id}-body`} class="fold-body" hidden={open ? false : ('until-found' as unknown as boolean)}>
        {(open || whole.value) && children}
      </div>
    </section>
  )
}
