/** Groups of equal shims in one text, as the core reads it: numbers with spaces between, groups with semicolons. */

/** The cells of each group; a unit stays with its number. */
export function groupsOf(text: string): string[][] {
  return text
    .split(/[;\n]/)
    .map((group) => group.trim().match(/\S+(?:\s+[A-Za-z]\S*)?/g) ?? [])
    .filter((cells) => cells.length > 0)
}

/** One text again; what is empty is left out. */
export function textOfGroups(groups: string[][]): string {
  return groups
    .map((cells) => cells.map((cell) => (cell ?? '').trim()).filter(Boolean).join(' '))
    .filter(Boolean)
    .join('; ')
}
