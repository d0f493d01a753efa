/**
 * Latest wins: while one question is being answered only the newest of those behind it is kept. A question that
 * was overtaken resolves to undefined; answers come in the order of their questions.
 */
export function latestOnly<Q, A>(ask: (question: Q) => Promise<A>): (question: Q) => Promise<A | undefined> {
  let busy = false
  let waiting: ((mine: boolean) => void) | undefined

  /** Hand over without a gap, so that no newcomer slips in between. */
  const handOver = () => {
    busy = waiting !== undefined
    waiting?.(true)
    waiting = undefined
  }

  return async (question) => {
    if (busy) {
      waiting?.(false)
      const mine = await new Promise<boolean>((settle) => {
        waiting = settle
      })
      if (!mine) return undefined
    }
    busy = true
    return ask(question).finally(handOver)
  }
}
