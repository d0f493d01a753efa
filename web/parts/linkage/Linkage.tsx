import { useEffect, useState } from 'preact/hooks'
import type { LinkageView, Motion } from '../../core/report.ts'
import { reports } from '../../store/index.ts'
import { theme } from '../../store/theme.ts'
import { Figure } from '../figure/Figure.tsx'
import { useWidth } from '../figure/useWidth.ts'
import { number, numberText } from '../figure/told.ts'
import { SideView } from './SideView.tsx'
import './linkage.css'

const WIDEST = 560

/** How the shock follows the rear wheel: a table, and a side view where the linkage's points are known. */
export function Linkage() {
  const { report, stale } = reports.rear.value
  const motion = report && report.state !== 'refused' ? report.motion : null
  if (!motion) return null
  return (
    <details class={`linkage ${stale === 'last good' ? 'last-good' : ''}`} open={motion.known_from !== 'leverage'} data-motion={motion.known_from}>
      <summary>Shock’s motion</summary>
      <p>
        Leverage <Figure of={motion.average} /> (wheel / shock) on average, falling by <Figure of={motion.fall} /> over the travel.
      </p>
      <p class="quiet">{motion.words}</p>
      {motion.views.length > 0 && <Pictured views={motion.views} />}
      <Rows motion={motion} />
      {motion.views.length > 0 && <Points views={motion.views} />}
      {motion.fit && <Scatter fit={motion.fit} />}
      <p class="quiet">{motion.left_out}</p>
    </details>
  )
}

function Pictured({ views }: { views: LinkageView[] }) {
  const { place, width } = useWidth<HTMLElement>()
  const [, measured] = useState(false)
  // Room is left for labels by their measured widths: measure again with the font, and at the theme's size.
  useEffect(() => void document.fonts.ready.then(() => measured(true)), [])
  void theme.value
  return (
    <figure ref={place}>
      {width > 0 && <SideView views={views} width={Math.min(width, WIDEST)} />}
      <figcaption class="quiet">Wheel travel in mm. Filled points are fixed to the frame; dashed is hanging, dotted is full travel.</figcaption>
    </figure>
  )
}

function Rows({ motion }: { motion: Motion }) {
  return (
    <table class="motion-table" data-table="motion">
      <caption class="aside">Shock stroke and leverage over wheel travel</caption>
      <thead>
        <tr>
          <th scope="col">wheel travel mm</th>
          <th scope="col">shock stroke mm</th>
          <th scope="col">leverage there</th>
        </tr>
      </thead>
      <tbody>
        {motion.rows.map((row) => (
          <tr key={row.travel.value}>
            <th scope="row">{number(row.travel)}</th>
            <td>{number(row.stroke)}</td>
            <td>{number(row.leverage)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}

/** Where every point is: forward and up from the swingarm pivot. */
function Points({ views }: { views: LinkageView[] }) {
  return (
    <details>
      <summary>Where the points are</summary>
      <div class="table-room" role="region" tabIndex={0} aria-label="Where the points are">
        <table class="motion-table">
          <caption>Forward, up; mm from the swingarm pivot.</caption>
          <thead>
            <tr>
              <td />
              {views.map((view) => (
                <th key={view.at} scope="col">
                  {view.at}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {Object.keys(views[0]!.points).map((name) => (
              <tr key={name}>
                <th scope="row">{name}</th>
                {views.map((view) => (
                  <td key={view.at}>{view.points[name]!.map((value) => numberText(value, 0)).join(', ')}</td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </details>
  )
}

/** What each measured length is off the fit by. */
function Scatter({ fit }: { fit: NonNullable<Motion['fit']> }) {
  return (
    <p>
      Off the fit, mm: {fit.residuals.map((one) => `${number(one.off)} at ${number(one.travel)}`).join('; ')}. Scatter <Figure of={fit.scatter} />.
    </p>
  )
}
