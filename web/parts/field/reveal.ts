import { signal } from '@preact/signals'
import { schema } from '../../store/schema.ts'

/** The field that a link leads to: its fold opens for it. */
export const wanted = signal('')

/** A link to a field brings it out from behind its fold and puts the hand on it. */
export function followLinksToFields(): void {
  document.addEventListener('click', (event) => {
    const path = (event.target as Element).closest<HTMLAnchorElement>('a[href^="#"]')?.hash.slice(1)
    if (!path || !(path in schema.fields)) return
    event.preventDefault()
    wanted.value = path
    // Once the fold has drawn its fields.
    requestAnimationFrame(() => {
      const row = document.getElementById(path)
      row?.querySelector<HTMLElement>('.value input, .value select')?.focus({ preventScroll: true })
      row?.scrollIntoView({ block: 'center' })
      wanted.value = ''
    })
  })
}
