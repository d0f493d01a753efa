/** What closes when the hand leaves must not move a button away from under the finger that is on it: it waits for the release. */
let down = false
const waiting = new Set<() => void>()

addEventListener('pointerdown', () => (down = true), true)
for (const over of ['pointerup', 'pointercancel'] as const) {
  addEventListener(over, () => {
    down = false
    // The click comes after the release.
    setTimeout(() => {
      for (const act of waiting) act()
      waiting.clear()
    })
  })
}

export function afterPress(act: () => void): void {
  if (down) waiting.add(act)
  else act()
}
