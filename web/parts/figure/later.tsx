import { signal } from '@preact/signals'
import type { ComponentType } from 'preact'
import { useEffect } from 'preact/hooks'
import './later.css'

/** A part that is fetched when it is first drawn. Its room is kept, so that nothing jumps; what fails can be tried again. */
export function later<Props extends object>(what: string, fetched: () => Promise<ComponentType<Props>>): ComponentType<Props> {
  const loaded = signal<ComponentType<Props> | null>(null)
  const failed = signal(false)

  async function load(): Promise<void> {
    failed.value = false
    await fetched()
      .then((part) => void (loaded.value = part))
      .catch(() => void (failed.value = true))
  }

  return function Later(props: Props) {
    useEffect(() => void (loaded.value ?? load()), [])
    const Part = loaded.value
    if (Part) return <Part {...props} />
    if (!failed.value) return <div class="later" aria-busy="true" />
    return (
      <p>
        {what} could not be fetched.{' '}
        <button type="button" class="link" onClick={() => void load()}>
          Try again
        </button>
      </p>
    )
  }
}
