/** How each field is measured, as declared. Texts and no code: fetched after the first screen, as the file it is. */
import { signal } from '@preact/signals'
import declared from '../generated/help.json?url'
import type { FieldPath } from '../generated/schema.ts'

const known = signal<Record<FieldPath, string> | null>(null)

export function fetchHelp(): void {
  if (known.value) return
  fetch(declared)
    .then((found) => found.json())
    .then((all: Record<FieldPath, string>) => (known.value = all))
    .catch(() => undefined)
}

export const helpOf = (path: FieldPath): string => known.value?.[path] ?? ''
