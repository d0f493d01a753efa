import { setRange } from '../../store/actions.ts'
import { job, report } from '../../store/index.ts'
import { type RangeRow, rangesFor } from '../../store/ranges.ts'
import './ranges.css'

const KEYS = ['low', 'typical', 'high'] as const

/** The trade's ranges, each open to the user's own: they judge and stand in, they never overrule a reading. */
export function Ranges() {
  const use = report.value?.use
  if (!use) return null
  return (
    <div class="ranges" id="ranges">
      <p class="quiet">Common practice, no source. Yours are kept with the job. A range never overrules a reading.</p>
      {rangesFor(use).map((row) => (
        <Row key={row.name} row={row} />
      ))}
    </div>
  )
}

function Row({ row }: { row: RangeRow }) {
  const own = job.value.practice?.[row.name]
  const problem = report.value?.range_problems.find(({ path }) => path === `practice.${row.name}`)
  const title = row.name.charAt(0).toUpperCase() + row.name.slice(1)
  const words = `range-${row.name.replaceAll(/\W+/g, '-')}`
  return (
    <fieldset class="range">
      <legend>
        {title}
        {row.unit && `, ${row.unit}`} <small>{own ? 'yours' : `confidence ${row.confidence}`}</small>
      </legend>
      {KEYS.map((key) => (
        <label key={key}>
          <span>{key}</span>
          <input
            type="text"
            inputMode="decimal"
            autocomplete="off"
            aria-invalid={problem ? true : undefined}
            aria-describedby={problem ? words : undefined}
            value={String(own?.[key] ?? row[key])}
            onInput={(event) => setRange(row, { ...own, [key]: event.currentTarget.value })}
          />
        </label>
      ))}
      {own && (
        <button type="button" class="link" onClick={() => setRange(row, undefined)}>
          Use the default
        </button>
      )}
      {problem && (
        <p class="attend" id={words}>
          {problem.message} Until then the usual range stands.
        </p>
      )}
    </fieldset>
  )
}
