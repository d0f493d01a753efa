// Less than this is a browser's own bar.
const KEYPAD = 120

/** Keep the strip above a phone's keyboard: a browser that lays it over the page says so only here. */
export function mindTheKeyboard(): void {
  const view = window.visualViewport
  if (!view) return
  const look = () => {
    // A page that is zoomed in shows less too, and that is no keyboard.
    const hidden = view.scale > 1.01 ? 0 : Math.max(0, innerHeight - view.height - view.offsetTop)
    document.documentElement.toggleAttribute('data-typing', hidden > KEYPAD)
    document.documentElement.style.setProperty('--keyboard', `${Math.round(hidden)}px`)
  }
  view.addEventListener('resize', look)
  view.addEventListener('scroll', look)
}
