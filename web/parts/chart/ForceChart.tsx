import { signal } from '@preact/signals'
import { useEffect, useState } from 'preact/hooks'
import type { End } from '../../core/report.ts'
import { report, reports } from '../../store/index.ts'
import { theme } from '../../store/theme.ts'
import { useWidth } from '../figure/useWidth.ts'
import { Drawing } from './Drawing.tsx'
import { ChartTable } from './Table.tsx'
import { type Shown, shownOf } from './words.ts'
import './chart.css'

const PLOT = 280
const WIDEST = 560

/** Both charts are turned together: they are read beside each other. */
const turned = signal(false)

/** Force against stroke of an end, one tap from its turned version and its table. */
export function ForceChart({ end }: { end: End }) {
  const view = reports[end].value
  const shown = view.report && view.report.state !== 'refused' ? shownOf(end, view.report) : null
  if (!shown) return null
  const oneSpring = end === 'front' && report.value?.fields['front.springs_in']?.value === 'one'
  return (
    <div class={`chart ${view.stale === 'last good' ? 'last-good' : ''}`}>
      <h3>
        {report.value?.header.invented ? 'Force, demo, invented' : 'Force'}
        {view.stale === 'last good' && <strong class="attend"> last good</strong>}
      </h3>
      <Sized shown={shown} oneSpring={oneSpring} />
      <button type="button" class="link" onClick={() => (turned.value = !turned.value)}>
        {turned.value ? 'Stroke up the side' : 'Stroke along the bottom'}
      </button>
      <details>
        <summary>Table behind the chart</summary>
        <ChartTable shown={shown} oneSpring={oneSpring} />
      </details>
    </div>
  )
}

function Sized({ shown, oneSpring }: { shown: Shown; oneSpring: boolean }) {
  const { place, width } = useWidth<HTMLDivElement>()
  const [, measured] = useState(false)
  // Labels keep off each other by their measured widths: measure again with the font, and at the theme's size.
  useEffect(() => void document.fonts.ready.then(() => measured(true)), [])
  void theme.value
  return (
    <div class="drawing-room" ref={place}>
      {width > 0 && <Drawing shown={shown} width={Math.min(width, WIDEST)} plot={PLOT} turned={turned.value} oneSpring={oneSpring} />}
    </div>
  )
}
