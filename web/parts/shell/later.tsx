/** A part that is fetched when it is first needed. Written here: the library's own brings its whole compatibility layer. */
import { signal } from '@preact/signals'
import type { ComponentType, JSX } from 'preact'
import './later.css'

export interface Later<Props> {
  (props: Props): JSX.Element
  /** Fetch it ahead of its use, so that a place switches at once. */
  fetch(): void
}

export function later<Props extends object = object>(load: () => Promise<ComponentType<Props>>): Later<Props> {
  const found = signal<ComponentType<Props> | null>(null)
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
  const Part = (props: Props) => {
    const Found = found.value
    if (Found) return <Found {...props} />
    if (!failed.value) fetch()
    return failed.value ? (
      <p role="alert">
        This part did not load. <button type="button" onClick={fetch}>Try again</button>
      </p>
    ) : (
      <div class="later" aria-busy="true" />
    )
  }
  return Object.assign(Part, { fetch })
}
