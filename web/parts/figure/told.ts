/** Results as text, rounded as the core rounds them in its sentences: page and sentence must say the same number. */
import type { Quantity, Setup } from '../../core/report.ts'

/** A number with a fixed number of decimals; a true minus sign, no negative zero. */
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

/** A spring rate as the trade writes it. */
export function rateText(value: number): string {
  if (value >= 20) return numberText(value, 1).replace(/\.0$/, '')
  return numberText(value, 2).replace(/0$/, '')
}

/** What is shown of a figure: a result's, or a reading's. */
export type Shown = Omit<Quantity, 'case' | 'origin'>

/** The number of a result, as the core rounded it. */
export const number = (figure: Shown): string => figure.text

/** What candidates are told apart by: an air spring's pressure, else the rate. */
export const stepOf = (setup: Setup): Quantity => setup.pressure ?? setup.rate

/** That as text, without its unit. */
export const stepText = (setup: Setup): string => number(stepOf(setup))

/** The +/- of a result; empty where no band was worked out. */
export const plusMinus = (figure: Shown): string => figure.plus_minus_text

/** A result with its unit and +/-. */
export const told = (figure: Quantity): string => [number(figure), figure.unit, plusMinus(figure)].filter(Boolean).join(' ')
