import { signal } from '@preact/signals'
import { schema } from '../../store/schema.ts'

/** The field that a link leads to: its fold opens for it. */
export const wanted = signal('')

/** Bring a field out from behind its fold and put the hand on it. */
export function goToField(path: string): void {
  wanted.value = path
  // Once the fold has drawn its fields.
  requestAnimationFrame(() => {
    const row = document.getElementById(path)
    row?.querySelector<HTMLElement>('.value input, .value select')?.focus({ preventScroll: true })
    row?.scrollIntoView({ block: 'center' })
    wanted.value = ''
  })
}

/** A link to a field leads to it. */
export function followLinksToFields(): void {
  document.addEventListener('click', (event) => {
    const path = (event.target as Element).closest<HTMLAnchorElement>('a[href^="#"]')?.hash.slice(1)
    if (!path || !(path in schema.fields)) return
    event.preventDefault()
    goToField(path)
  })
}
