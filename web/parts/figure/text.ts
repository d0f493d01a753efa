/** Results as text: the core has rounded them, so that page and sentence say the same number. */
import type { Quantity, Setup } from '../../core/report.ts'

/** A number that is no result (a point of a drawing, of a curve), with a fixed number of decimals; a true minus sign, no negative zero. */
export function numberText(value: number, decimals: number): string {
  const size = Math.abs(value)
  const text = tie(size, decimals) ?? size.toFixed(decimals)
  return value < 0 && Number(text) !== 0 ? `−${text}` : text
}

/** toFixed takes an exact half up; the core takes it to the even neighbour. */
function tie(size: number, decimals: number): string | undefined {
  if ((size * 2 ** (decimals + 1)) % 2 !== 1) return undefined
  const below = Math.floor(size * 10 ** decimals)
  return ((below + (below % 2)) / 10 ** decimals).toFixed(decimals)
}

/** What is shown of a figure: a result's, or a reading's. */
export type Shown = Omit<Quantity, 'case' | 'origin'>

/** The number of a result, as the core rounded it. */
export const number = (figure: Shown): string => figure.text

/** What candidates differ by: an air spring's pressure, else the rate. */
export const stepOf = (setup: Setup): Quantity => setup.pressure ?? setup.rate

/** That as text, without its unit. */
export const stepText = (setup: Setup): string => number(stepOf(setup))

/** The +/- of a result; empty where no band was worked out. */
export const plusMinus = (figure: Shown): string => figure.plus_minus_text

/** A result without its sign, where a word says which way it goes. */
export const size = <F extends Shown>(figure: F): F => ({ ...figure, value: Math.abs(figure.value), text: figure.text.replace('−', '') })

/** A result without its +/-, where another's stands for both. */
export const bare = <F extends Shown>(figure: F): F => ({ ...figure, plus_minus_95: null, plus_minus_text: '' })

/** A result with its unit and +/-. */
export const withUnit = (figure: Quantity): string => [number(figure), figure.unit, plusMinus(figure)].filter(Boolean).join(' ')
