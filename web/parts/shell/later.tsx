/** A part that is fetched when it is first needed. Written here: the library's own brings its whole compatibility layer. */
import { signal } from '@preact/signals'
import type { ComponentType } from 'preact'

export interface Later {
  (): preact.JSX.Element
  /** Fetch it ahead of its use, so that a place switches at once. */
  fetch(): void
}

export function later(load: () => Promise<ComponentType>): Later {
  const found = signal<ComponentType | null>(null)
  const failed = signal(false)
  let coming = false
  const fetch = () => {
    if (coming) return
    coming = true
    failed.value = false
    load().then(
      (part) => (found.value = part),
      () => {
        coming = false
        failed.value = true
      },
    )
  }
  const Part = () => {
    const Found = found.value
    if (Found) return <Found />
    if (!failed.value) fetch()
    return failed.value ? (
      <p role="alert">
        This part did not load. <button onClick={fetch}>Try again</button>
      </p>
    ) : (
      <p role="status" class="aside">
        Loading
      </p>
    )
  }
  return Object.assign(Part, { fetch })
}
