import { number, plusMinus, rateText, type Shown } from './told.ts'
import './figure.css'

/** A worked-out figure: the number, its unit smaller, its +/- smallest, all on one line. `to` makes it a span of rates. */
export function Figure({ of, unit, rate = false, to }: { of: Shown; unit?: string; rate?: boolean; to?: number }) {
  const band = to === undefined ? plusMinus(of) : ''
  const words = unit ?? of.unit
  return (
    <span class="told">
      <b>
        {rate ? rateText(of.value) : number(of)}
        {to !== undefined && ` to ${rateText(to)}`}
      </b>
      {words && <span class="unit"> {words}</span>}
      {band && <small> {band}</small>}
    </span>
  )
}
