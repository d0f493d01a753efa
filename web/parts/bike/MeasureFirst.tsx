import type { End } from '../../core/report.ts'
import { report } from '../../store/index.ts'

/** How much of the answer is assumed, and which readings narrow it most. */
export function MeasureFirst() {
  const said = report.value
  if (!said || said.measure_first.length === 0) return null
  return (
    <div class="measure-first">
      <p>
        <span class="assumed">Rests on assumed values</span>: {share('front')} at the front, {share('rear')} at the rear. It is a start, not
        an order for parts.
      </p>
      <h3>Measure first</h3>
      <ol>
        {said.measure_first.map(({ path, words, how }) => (
          <li key={path}>
            <a href={`#${path}`}>{words.replace(/\.$/, '')} ›</a>
            <p class="quiet">{how}</p>
          </li>
        ))}
      </ol>
    </div>
  )

  function share(end: End): string {
    const { assumed, of } = said!.assumed[end]
    return `${assumed} of ${of}`
  }
}
