/** How each field is measured, as declared. Fetched after the first screen. */
import { signal } from '@preact/signals'
import type { FieldPath } from '../generated/schema.ts'

const known = signal<Record<FieldPath, string> | null>(null)

export function fetchHelp(): void {
  if (known.value) return
  import('../generated/help.json').then(({ default: all }) => (known.value = all as Record<FieldPath, string>)).catch(() => undefined)
}

export const helpOf = (path: FieldPath): string => known.value?.[path] ?? ''
