import type { Curve, End } from '../../core/report.ts'
import { report, reports } from '../../store/index.ts'
import { theme } from '../../store/theme.ts'
import { useFonts, useWidth } from '../figure/useWidth.ts'
import { chosen, OverlayChoice } from './choice.tsx'
import { Drawing } from './Drawing.tsx'
import { ChartTable } from './Table.tsx'
import { turned, TurnButton } from './turn.tsx'
import { type Looked, pairWords, type Shown, shownOf } from './words.ts'
import './chart.css'

const PLOT = 280
const WIDEST = 560

/** Force against stroke of an end, one tap from its turned version and its table. */
export function ForceChart({ end, looked, built = null }: { end: End; looked?: Looked | undefined; built?: Curve | null }) {
  const view = reports[end].value
  const all = view.report && view.report.state !== 'refused' ? shownOf(end, view.report, looked, built) : null
  if (!all) return null
  const oneSpring = springsInOne(end)
  const shown = chosen(all)
  return (
    <div class={`chart ${view.stale === 'last good' ? 'last-good' : ''}`}>
      <ChartTitle end={end} />
      <Sized shown={shown} oneSpring={oneSpring} />
      <p class="quiet">{pairWords(all.setup)}</p>
      <OverlayChoice shown={all} />
      <TurnButton />
      <details>
        <summary>Figures as a table</summary>
        <ChartTable shown={shown} oneSpring={oneSpring} />
      </details>
    </div>
  )
}

/** Both ends have a chart: each says whose it is, and whether it is of a demo. */
export function ChartTitle({ end }: { end: End }) {
  return (
    <h2 class="chart-title">
      {end === 'front' ? 'Front force' : 'Rear force'}
      {report.value?.header.invented && ' (demo)'}
      {reports[end].value.stale === 'last good' && <strong class="attend"> last good</strong>}
    </h2>
  )
}

export const springsInOne = (end: End): boolean => end === 'front' && report.value?.fields['front.springs_in']?.value === 'one'

function Sized({ shown, oneSpring }: { shown: Shown; oneSpring: boolean }) {
  const { place, width } = useWidth<HTMLDivElement>()
  useFonts()
  void theme.value
  return (
    <div class="drawing-room" ref={place}>
      {width > 0 && <Drawing shown={shown} width={Math.min(width, WIDEST)} plot={PLOT} turned={turned.value} oneSpring={oneSpring} />}
    </div>
  )
}
