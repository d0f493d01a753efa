import { reports } from '../../store/index.ts'
import { Figure } from '../figure/Figure.tsx'

/** Where the fork stands under the braking that the job asks for; nothing where it asks for none. */
export function Braking() {
  const { report, stale } = reports.front.value
  const braking = report && report.state !== 'refused' ? report.braking : null
  if (!braking) return null
  return (
    <div class={stale === 'last good' ? 'last-good' : ''} data-braking={braking.problem ? 'problem' : 'ok'}>
      <h3>Brake dive</h3>
      {braking.problem ? (
        <p>
          <a href={`#${braking.problem.path}`}>{braking.words}</a>
        </p>
      ) : (
        <>
          <p>
            Slowing at <Figure of={braking.deceleration} /> the fork stands at <Figure of={braking.stroke} />, <Figure of={braking.added} /> beyond rider
            sag, with <Figure of={braking.left} /> left. The rear tyre keeps <Figure of={braking.rear_tyre} />.
          </p>
          <p class="quiet">
            Strokes {braking.stroke.case}. {braking.left_out}
          </p>
        </>
      )}
    </div>
  )
}
