import { signal } from '@preact/signals'
import { useEffect } from 'preact/hooks'
import { pointOf } from './entered.ts'

/** The point whose figures are being typed. */
export const lit = signal<string | null>(null)

/** Follow the hand from field to field while a side view is on the page. */
export function useLit(): void {
  useEffect(() => {
    const follow = () => (lit.value = pointOf((document.activeElement as HTMLInputElement | null)?.name ?? ''))
    // Between two fields the focus is on neither for a moment.
    const leave = () => setTimeout(follow)
    document.addEventListener('focusin', follow)
    document.addEventListener('focusout', leave)
    follow()
    return () => {
      document.removeEventListener('focusin', follow)
      document.removeEventListener('focusout', leave)
    }
  }, [])
}
