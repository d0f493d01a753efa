import type { OfferOption } from '../../core/report.ts'
import '../figure/plaintable.css'

/** The lines of a bill, and what they come to. */
export function Bill({ told }: { told: OfferOption }) {
  if (told.lines.length === 0) return null
  return (
    <>
      <table class="plain-table">
        <caption class="aside">Parts and work of option {told.number}</caption>
        <thead>
          <tr>
            <td />
            <th scope="col">each</th>
            <th scope="col">amount</th>
          </tr>
        </thead>
        <tbody>
          {told.lines.map(({ what, count, price, amount }, at) => (
            <tr key={at}>
              <th scope="row">
                {what || 'Part'}
                {count && ` × ${count}`}
              </th>
              <td>{price}</td>
              <td>{amount}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {told.bill && <p>{told.bill.words}</p>}
    </>
  )
}
