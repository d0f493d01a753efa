import type { End, EndReport, Figures, Setup } from '../../core/report.ts'
import { ahead, report, reports } from '../../store/index.ts'
import { Figure } from '../figure/Figure.tsx'
import { MarkSign } from '../figure/Mark.tsx'
import { Rule } from './Rule.tsx'
import { useEndInView } from './inView.ts'
import './strip.css'

export const END_WORDS = { front: 'Front', rear: 'Rear' } as const

/** The few results that matter now, in view while inputs change; each leads to its part. */
export function Strip() {
  const end = useEndInView()
  const view = reports[end].value
  const newer = ahead[end].value
  const figures = newer ?? figuresOf(view.report)
  const stale = newer ? 'no' : view.stale
  const mark = stale === 'last good' ? 'last good' : !newer && stale === 'no' && view.report?.state === 'none' ? 'as found' : ''
  return (
    <nav class={`strip ${mark === 'last good' ? 'strip-old' : ''}`} aria-label={`Results, ${END_WORDS[end].toLowerCase()}`} data-strip={end} data-stale={stale}>
      <div class="strip-rule">
        {figures ? <Rule figures={figures} /> : <span class="rule" />}
        <span class="strip-travel">
          {END_WORDS[end]}
          {!mark && <span class="strip-mm"> {Math.round(figures?.travel ?? travelEntered(end))} mm</span>}
          {mark && <strong> {mark}</strong>}
        </span>
      </div>
      <Results end={end} setup={figures?.setup ?? null} />
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

/** The same of a report; the curve ends at full travel, where the core worked the end force out. */
function figuresOf(done: EndReport | null): Figures | null {
  if (!done || done.state === 'refused') return null
  const setup = done.state === 'ok' ? done.chosen : done.as_found.setup
  const travel = done.curve?.stroke.at(-1)
  return setup && travel ? { setup, travel, windows: done.windows } : null
}

function travelEntered(end: End): number {
  const value = report.value?.fields[`${end}.travel`]?.value
  return typeof value === 'number' ? value : 0
}
