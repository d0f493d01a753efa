import type { LinkageView, Motion } from '../../core/report.ts'
import { reports } from '../../store/index.ts'
import { Figure } from '../figure/Figure.tsx'
import { number, numberText } from '../figure/text.ts'
import '../figure/plaintable.css'
import './linkage.css'

/** How the shock follows the rear wheel, in figures; its picture stands before the fields. */
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
      <Rows motion={motion} />
      {motion.views.length > 0 && <Points views={motion.views} />}
      {motion.fit && <Scatter fit={motion.fit} />}
      <p class="quiet">{motion.left_out}</p>
    </details>
  )
}

function Rows({ motion }: { motion: Motion }) {
  return (
    <table class="plain-table" data-table="motion">
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
        <table class="plain-table">
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
