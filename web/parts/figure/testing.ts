/** A figure as the core makes one, for tests. */
import type { Quantity } from '../../core/report.ts'

export function figure(value: number, unit = 'mm', decimals = 0, plusMinus = ''): Quantity {
  const band = plusMinus ? Number(plusMinus.slice(1)) : null
  return { value, unit, case: 'x', origin: 'worked out', plus_minus_95: band, decimals, text: value.toFixed(decimals), plus_minus_text: plusMinus }
}
