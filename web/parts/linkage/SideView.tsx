import type { LinkageView } from '../../core/report.ts'
import { textWidth } from '../chart/measure.ts'
import { number } from '../figure/text.ts'
import { layout, middle, type Spot } from './layout.ts'

const STYLES = ['hanging', 'ridden', 'full'] as const
const ON_FRAME = new Set(['swingarm pivot', 'shock top'])

/** Three positions over each other, one line weight: hanging dashed, at rider sag full, at full travel dotted; the point being typed is lit. */
export function SideView({ views, width, lit }: { views: LinkageView[]; width: number; lit?: string | undefined }) {
  const names = views.map((view) => `${view.at.replace('at ', '')} ${number(view.travel)}`)
  const beside = Math.max(...names.map((name) => textWidth(name))) + 12
  const place = layout(views, width, beside)
  const ridden = place.views[1]!
  return (
    <svg class="side-view" viewBox={`0 0 ${width} ${place.height}`} width={width} height={place.height} role="img" aria-label={words(views)}>
      {[0, 2, 1].map((index) => (
        <g key={index} class={STYLES[index]} data-view={views[index]!.at}>
          {views[index]!.bars.map(([one, other]) => (
            <Bar key={`${one} ${other}`} from={place.views[index]![one]!} to={place.views[index]![other]!} />
          ))}
          <circle class="moves" cx={place.views[index]!['axle']!.x} cy={place.views[index]!['axle']!.y} r={6} />
        </g>
      ))}
      {Object.entries(ridden)
        .filter(([name]) => name !== 'axle')
        .map(([name, spot]) => (
          <circle key={name} class={still(name, views) ? 'fixed' : 'moves'} cx={spot.x} cy={spot.y} r={4} />
        ))}
      {names.map((name, index) => (
        <AxleName key={name} name={name} to={place.views[index]!['axle']!} y={place.labels[index]!} right={place.left} />
      ))}
      <PartNames points={ridden} height={place.height} width={width} />
      {/* The point being typed, wherever it goes. */}
      {lit && place.views.map((spots, index) => spots[lit] && <circle key={index} class="ring" cx={spots[lit].x} cy={spots[lit].y} r={10} data-lit={lit} />)}
    </svg>
  )
}

const Bar = ({ from, to }: { from: Spot; to: Spot }) => <line x1={from.x} y1={from.y} x2={to.x} y2={to.y} />

function AxleName({ name, to, y, right }: { name: string; to: Spot; y: number; right: number }) {
  return (
    <g>
      <line class="leader" x1={right + 2} y1={y} x2={to.x - 8} y2={to.y} />
      <text x={right - 4} y={y + 5} text-anchor="end">
        {name}
      </text>
    </g>
  )
}

/** Swingarm and shock are named beside their lines; rocker and rod below everything, the one further back to the left. */
function PartNames({ points, height, width }: { points: Record<string, Spot>; height: number; width: number }) {
  const foot = points['shock on rocker'] ?? points['shock foot']!
  const top = points['shock top']!
  const shock = middle(top, top, top, foot)
  const arm = middle(points['swingarm pivot']!, points['axle']!)
  return (
    <g class="names">
      <text x={shock.x - 8} y={shock.y} text-anchor="end">
        shock
      </text>
      <text x={arm.x - 20} y={arm.y - 10} text-anchor="middle">
        swingarm
      </text>
      {points['rocker pivot'] && <Below points={points} height={height} width={width} />}
    </g>
  )
}

function Below({ points, height, width }: { points: Record<string, Spot>; height: number; width: number }) {
  const rocker = middle(points['rocker pivot']!, points['rod on rocker']!, points['shock on rocker']!)
  const rod = middle(points['rod on rocker']!, points["rod's other end"]!)
  const parts = [
    { name: 'rocker', spot: rocker },
    { name: 'rod', spot: rod },
  ].sort((a, b) => a.spot.x - b.spot.x)
  const y = height - 8
  const split = (parts[0]!.spot.x + parts[1]!.spot.x) / 2
  const half = 0.5 * textWidth('rocker') + 8
  return parts.map(({ name, spot }, index) => {
    const x = Math.min(Math.max(split + (index === 0 ? -half : half), half), width - half)
    return (
      <g key={name}>
        <line class="leader" x1={spot.x} y1={spot.y} x2={x} y2={y - 16} />
        <text x={x} y={y} text-anchor="middle">
          {name}
        </text>
      </g>
    )
  })
}

/** True for a point that stands where it stands in every view. */
function still(name: string, views: LinkageView[]): boolean {
  const [first, ...rest] = views.map((view) => view.points[name]!)
  return ON_FRAME.has(name) || rest.every((point) => Math.hypot(point[0] - first![0], point[1] - first![1]) < 0.05)
}

function words(views: LinkageView[]): string {
  const shock = views.map((view) => `${number(view.shock_length)} mm long ${view.at}`).join(', ')
  const rod = views[0]!.points['rocker pivot'] ? 'the shock on the frame and on a rocker that a rod turns' : 'the shock between frame and swingarm'
  return `Side view, front to the right: swingarm with the axle at the left, ${rod}. The shock is ${shock}.`
}
