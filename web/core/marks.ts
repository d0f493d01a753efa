/** The moments that the bench reads, each set once. */
export type Moment = 'first-screen' | 'saved-answer' | 'first-computed'

export function markOnce(moment: Moment): void {
  const name = `stanchion:${moment}`
  if (!performance.getEntriesByName(name).length) performance.mark(name)
}
