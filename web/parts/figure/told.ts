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

/** The number of a result; N/mm of a spring is written as a rate. */
export const number = (figure: Quantity): string => numberText(figure.value, figure.decimals)

/** What candidates are told apart by: an air spring's pressure, else the rate. */
export const stepOf = (setup: Setup): Quantity => setup.pressure ?? setup.rate

/** That as text, without its unit. */
export const stepText = (setup: Setup): string => (setup.pressure ? number(setup.pressure) : rateText(setup.rate.value))

/** The +/- of a result, to the decimals that its value shows; empty where no band was worked out. Never ±0. */
export function plusMinus(figure: Quantity): string {
  const half = figure.plus_minus_95
  if (half === null) return ''
  const shown = figure.unit === 'N/mm' ? rateText(figure.value) : number(figure)
  const text = numberText(half, shown.split('.')[1]?.length ?? 0)
  return `±${Number(text) === 0 ? Number(half.toPrecision(1)) : text}`
}

/** A result with its unit and +/-. */
export const told = (figure: Quantity): string => [number(figure), figure.unit, plusMinus(figure)].filter(Boolean).join(' ')
