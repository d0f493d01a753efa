import type { End, Report } from '../../core/report.ts'
import { report, reports } from '../../store/index.ts'

type Reading = Report['measure_first'][number]

/** How much of the answer is assumed, and which readings narrow it most. */
export function MeasureFirst() {
  const said = report.value
  if (!said || said.measure_first.length === 0) return null
  const ranked = next()
  return (
    <div class="measure-first">
      <p>
        <span class="assumed">Rests on assumed values</span>: {share('front')} at the front, {share('rear')} at the rear. It is a start, not
        an order for parts.
      </p>
      <h3>Measure first</h3>
      <ol>
        {(ranked.length > 0 ? ranked : said.measure_first).map(({ path, words, how }) => (
          <li key={path}>
            <a href={`#${path}`}>{words.replace(/\.$/, '')} ›</a>
            <p class="quiet">{how}</p>
          </li>
        ))}
      </ol>
    </div>
  )

  /** By what the draws say once they are there: the best two of each end, each reading once. */
  function next(): Reading[] {
    const best = (['front', 'rear'] as const).flatMap((end) => {
      const view = reports[end].value.report
      return !view || view.state === 'refused' ? [] : view.measure_next.slice(0, 2)
    })
    return best.filter((one, index) => best.findIndex((other) => other.path === one.path) === index)
  }

  function share(end: End): string {
    const { assumed, of } = said!.assumed[end]
    return `${assumed} of ${of}`
  }
}
