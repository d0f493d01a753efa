import type { End, Setup } from '../../core/report.ts'
import { newest } from '../../store/index.ts'
import { Figure } from '../figure/Figure.tsx'
import { MarkSign } from '../figure/Mark.tsx'
import { Rule } from './Rule.tsx'
import { useEndInView } from './inView.ts'
import './strip.css'

export const END_WORDS = { front: 'Front', rear: 'Rear' } as const

/** The few results that matter now, in view while inputs change; each leads to its part. */
export function Strip() {
  const end = useEndInView()
  const view = newest[end].value
  const { report: done } = view
  const setup = !done || done.state === 'refused' ? null : done.state === 'ok' ? done.chosen : (done.as_found.setup ?? null)
  const travel = travelOf(end, done && done.state !== 'refused' ? done.curve?.stroke : undefined)
  const mark = view.stale === 'no' && done?.state === 'none' ? 'as found' : view.stale === 'last good' ? 'last good' : ''
  return (
    <nav class={`strip ${mark === 'last good' ? 'strip-old' : ''}`} aria-label={`Results, ${END_WORDS[end].toLowerCase()}`} data-strip={end} data-stale={view.stale}>
      <div class="strip-rule">
        {done && done.state !== 'refused' && setup ? <Rule end={done} setup={setup} travel={travel} /> : <span class="rule" />}
        <span class="strip-travel">
          {END_WORDS[end]}
          {mark ? '' : <span class="strip-mm"> {Math.round(travel)} mm</span>}
          {mark && <strong> {mark}</strong>}
        </span>
      </div>
      <Results end={end} setup={setup} />
    </nav>
  )
}

function Results({ end, setup }: { end: End; setup: Setup | null }) {
  const part = end === 'rear' ? 'rear' : 'springs'
  return (
    <ul>
      <li>
        <a href={`#${part}`}>
          <MarkSign kind="free" /> <span class="strip-name">Free sag ›</span>
          {setup && <Figure of={setup.free_sag} />}
        </a>
      </li>
      <li>
        <a href={`#${part}`}>
          <MarkSign kind="rider" /> <span class="strip-name">Rider sag ›</span>
          {setup && <Figure of={setup.rider_sag} />}
        </a>
      </li>
      <li>
        <a href={end === 'rear' ? '#rear' : '#oil'}>
          <MarkSign kind="end" /> <span class="strip-name">End force ›</span>
          {setup && <Figure of={setup.end_multiple} unit="× load" />}
        </a>
      </li>
    </ul>
  )
}

/** Full travel in mm: where the curve ends, which is where the core worked the end force out. */
function travelOf(end: End, stroke: number[] | undefined): number {
  const value = stroke?.at(-1) ?? newest.report.value?.fields[`${end}.travel`].value
  return typeof value === 'number' ? value : 0
}
