import { reveal } from '../../store/folds.ts'
import { go, isPlace, place, read } from '../../store/place.ts'
import { schema } from '../../store/schema.ts'
import type { FieldPath } from '../../generated/schema.ts'

/** Links to places and to fields are followed here: a place switches at once, a field comes out of its fold and takes the hand. */
export function followLinks(): void {
  document.addEventListener('click', (event) => {
    if (event.defaultPrevented || event.ctrlKey || event.metaKey || event.shiftKey || event.button !== 0) return
    const hash = (event.target as Element).closest<HTMLAnchorElement>('a[href^="#"]')?.getAttribute('href')
    if (!hash) return
    const to = read(hash)
    const path = hash.slice(1)
    if (to) go(to.room, { side: !isPlace(to.room) || to.room === 'bike' ? undefined : to.side, top: to.room === place.value ? true : undefined })
    else if (path in schema.fields) reveal(path as FieldPath)
    else if (!document.getElementById(path)) return
    else skipTo(path)
    event.preventDefault()
  })
}

/** A skip link moves the hand, and is no step in the history. */
function skipTo(id: string): void {
  const target = document.getElementById(id)!
  target.focus({ preventScroll: true })
  target.scrollIntoView({ block: 'start' })
}
