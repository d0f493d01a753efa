import { number, plusMinus, type Shown } from './text.ts'
import './figure.css'

/** A worked-out figure: the number, its unit smaller, its +/- smallest, all on one line. `to` makes it a span. */
export function Figure({ of, unit, to }: { of: Shown; unit?: string; to?: string }) {
  const band = to === undefined ? plusMinus(of) : ''
  const words = unit ?? of.unit
  return (
    <span class="result">
      <b>
        {number(of)}
        {to !== undefined && ` to ${to}`}
      </b>
      {words && <span class="unit"> {words}</span>}
      {band && <small> {band}</small>}
    </span>
  )
}
