import type { Quantity } from '../../core/report.ts'
import { number, plusMinus, rateText } from './told.ts'
import './figure.css'

/** A worked-out figure: the number, its unit smaller, its +/- smallest, all on one line. */
export function Figure({ of, unit, rate = false }: { of: Quantity; unit?: string; rate?: boolean }) {
  const band = plusMinus(of)
  const words = unit ?? of.unit
  return (
    <span class="told">
      <b>{rate ? rateText(of.value) : number(of)}</b>
      {words && <span class="unit"> {words}</span>}
      {band && <small> {band}</small>}
    </span>
  )
}
