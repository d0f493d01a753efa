/** A part that is fetched when first needed. */
import { type ReadonlySignal, signal } from '@preact/signals'

/** Undefined until it has arrived; a look at it sets it on its way, and the next look tries again where it was lost. */
export function lazily<T>(fetch: () => Promise<T>): { readonly value: T | undefined } {
  const part = signal<T | undefined>(undefined)
  let coming = false
  const bring = async () => {
    coming = true
    part.value = await fetch().catch(() => undefined)
    coming = part.value !== undefined
  }
  return {
    get value() {
      if (!coming) void bring()
      return (part as ReadonlySignal<T | undefined>).value
    },
  }
}
