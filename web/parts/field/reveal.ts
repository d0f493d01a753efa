/** A link to a field brings it out from behind its fold and puts the hand on it. */
export function followLinksToFields(): void {
  document.addEventListener('click', (event) => {
    const link = (event.target as Element).closest<HTMLAnchorElement>('a[href^="#"]')
    const row = link && document.getElementById(link.hash.slice(1))
    const control = row?.querySelector<HTMLElement>('.value input, .value select')
    if (!row || !control || !row.classList.contains('row')) return
    event.preventDefault()
    const fold = row.closest('details')
    if (fold) fold.open = true
    control.focus({ preventScroll: true })
    row.scrollIntoView({ block: 'center' })
  })
}
