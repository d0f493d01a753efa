/** What a person types, taken apart and put together. It is never read as a number here: that is the core's work. */

const PLAIN = /^[+\-−]?(?:\d+[.,]?\d*|[.,]\d+)(?:e[+-]?\d+)?$/i

/** Take "96.2 kg" apart for the two places it is shown in. Text of any other kind stays whole. */
export function apart(text: string, units: readonly string[]): { number: string; unit: string } {
  const trimmed = text.trim()
  const unit = units.filter((name) => trimmed.endsWith(name)).sort((a, b) => b.length - a.length)[0] ?? ''
  const number = trimmed.slice(0, trimmed.length - unit.length).trim()
  return unit && PLAIN.test(number) ? { number, unit } : { number: text, unit: '' }
}

/** Put typed text and the unit that stands beside it together, unless the text brings something of its own. */
export function together(text: string, unit: string): string {
  return unit && PLAIN.test(text.trim()) ? `${text.trim()} ${unit}` : text
}

/** A figure as people write it: at most and at least so many decimals, no needless zeros, a true minus sign. */
export function figure(value: number, most: number, least = 0): string {
  const shortest = String(Number(value.toFixed(most)))
  const text = (shortest.split('.')[1] ?? '').length < least ? Number(shortest).toFixed(least) : shortest
  return (text === '-0' ? '0' : text).replace('-', '−')
}

/** A figure of a reading: as exact as it was entered, without the noise of binary. */
export const plain = (value: number, least = 0): string => figure(value, Math.max(0, 3 - Math.floor(Math.log10(Math.abs(value) || 1))), least)
