/** What the very first script (offline/static/first.js) waits to hear from the page, and does when there is none. */
interface First {
  drawn(): void
  failed(cause: string): void
}

declare global {
  interface Window {
    stanchionFirst?: First
  }
}

/** The page stands. */
export const drawn = (): void => window.stanchionFirst?.drawn()

/** The page cannot be drawn: say why, and hand the jobs out. */
export function failed(error: unknown): void {
  const cause = error instanceof Error ? `${error.name}: ${error.message}` : String(error)
  console.error(error)
  window.stanchionFirst?.failed(cause)
}
