/** A page that was frozen, or a device that slept: what stood before may not be true any more. */

const LOOK = 5_000
/** A look that comes so much later than it should: nobody was awake. Hidden pages are looked at once a minute. */
const LATE = 90_000

/** Call back whenever the page wakes from more than being hidden. */
export function watchSleep(woken: () => void): void {
  let last = Date.now()
  setInterval(() => {
    const now = Date.now()
    if (now - last > LATE) woken()
    last = now
  }, LOOK)
  // A page that is frozen, and one that comes back by the back button, stood still in between.
  document.addEventListener('resume', woken)
  addEventListener('pageshow', (event: PageTransitionEvent) => event.persisted && woken())
}
