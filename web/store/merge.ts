/** Two edits of one job from one beginning, as two tabs make them: each entry is taken from whoever changed it. */
import type { JobDocument } from './document.ts'

type Plain = Record<string, unknown>

const isPlain = (value: unknown): value is Plain => typeof value === 'object' && value !== null && !Array.isArray(value)

export const same = (one: unknown, other: unknown): boolean => JSON.stringify(one) === JSON.stringify(other)

/** `mine` where it differs from `base`, else `theirs`. Where both changed one entry, mine stands: it was typed last. */
export function merged(base: JobDocument, mine: JobDocument, theirs: JobDocument): JobDocument {
  return into(base, mine, theirs, 2) as unknown as JobDocument
}

// Ticks are entries of their own, a level deeper: whoever ticks in another tab loses none.
const TICKED = 'work'

/** Groups and their entries are joined; an entry is one thing, never half mine. */
function into(base: Plain, mine: Plain, theirs: Plain, depth: number): Plain {
  const made: Plain = {}
  for (const key of new Set([...Object.keys(theirs), ...Object.keys(mine)])) {
    const [was, here, there] = [base[key], mine[key], theirs[key]]
    if (depth > 1 && isPlain(here) && isPlain(there)) made[key] = into(isPlain(was) ? was : {}, here, there, key === TICKED ? depth : depth - 1)
    else if (same(was, here) ? key in theirs : key in mine) made[key] = same(was, here) ? there : here
  }
  return made
}
