import type { LinkageView } from '../../core/report.ts'
import { stateOf } from '../../store/fields.ts'
import { reports } from '../../store/index.ts'
import { theme } from '../../store/theme.ts'
import { useFonts, useWidth } from '../figure/useWidth.ts'
import { barsOf, type EnteredPoint, enteredPoints, fit, nameOf } from './entered.ts'
import { lit, useLit } from './lit.ts'
import { SideView } from './SideView.tsx'
import './linkage.css'

const WIDEST = 440
const HEIGHT = 190

/** The linkage from the side, first of all: as far as its points are entered, or in three positions once the loop closes. */
export function LinkagePicture() {
  if (stateOf('rear.motion_from')?.value !== 'points') return null
  const { report, stale } = reports.rear.value
  const motion = report && report.state !== 'refused' && stale !== 'last good' ? report.motion : null
  const rocker = stateOf('rear.linkage')?.value === 'rocker'
  const points = enteredPoints(rocker, (path) => {
    const state = stateOf(path)
    return state?.entered && !state.problem && state.unit === 'mm' && typeof state.value === 'number' ? state.value : null
  })
  return <Pictured views={motion?.views ?? []} points={points} onSwingarm={stateOf('rear.rocker_on')?.value !== 'frame'} />
}

function Pictured({ views, points, onSwingarm }: { views: readonly LinkageView[]; points: EnteredPoint[]; onSwingarm: boolean }) {
  const { place, width } = useWidth<HTMLElement>()
  useFonts()
  useLit()
  void theme.value
  const missing = points.filter((point) => !point.at).map((point) => point.name)
  const shown = lit.value === null ? undefined : nameOf(lit.value)
  const closed = views.length > 0
  return (
    <figure class="linkage-picture" ref={place} data-linkage={closed ? 'closed' : 'entered'}>
      {width > 0 && closed && <SideView views={[...views]} width={Math.min(width, WIDEST)} lit={shown} />}
      {width > 0 && !closed && <Entered points={points} bars={barsOf(points, onSwingarm)} width={Math.min(width, WIDEST)} lit={shown} />}
      <figcaption class="quiet">
        {closed ? 'Wheel travel in mm. Filled points are fixed to the frame; dashed is hanging, dotted is full travel.' : `From the swingarm pivot, front to the right.${missing.length > 0 ? ` Not entered yet: ${missing.join(', ')}.` : ''}`}
      </figcaption>
    </figure>
  )
}

interface EnteredProps {
  points: EnteredPoint[]
  bars: [string, string][]
  width: number
  lit: string | undefined
}

/** One position, as the points were taken. */
function Entered({ points, bars, width, lit: name }: EnteredProps) {
  const spots = fit(points, width, HEIGHT)
  const known = points.filter((point) => point.at)
  const said = known.map(({ name: one, at }) => `${one} ${at![0]} forward, ${at![1]} up`).join('; ')
  return (
    <svg class="side-view" viewBox={`0 0 ${width} ${HEIGHT}`} width={width} height={HEIGHT} role="img" aria-label={`Side view of the points entered so far, mm from the swingarm pivot: ${said || 'none'}.`}>
      {bars.map(([one, other]) => (
        <line key={`${one} ${other}`} x1={spots[one]!.x} y1={spots[one]!.y} x2={spots[other]!.x} y2={spots[other]!.y} />
      ))}
      {Object.entries(spots).map(([one, spot]) => (
        <circle key={one} class={one === 'swingarm pivot' ? 'fixed' : 'moves'} cx={spot.x} cy={spot.y} r={one === 'axle' ? 6 : 4.5} data-point-of={one} />
      ))}
      <Names spots={spots} width={width} lit={name} />
      {name && spots[name] && <Ring spot={spots[name]} name={name} />}
    </svg>
  )
}

/** The pivot and the axle are named; of the others only the one being typed, so that no name lies on another. */
function Names({ spots, width, lit: name }: { spots: ReturnType<typeof fit>; width: number; lit: string | undefined }) {
  const shown = ['swingarm pivot', 'axle', ...(name ? [name] : [])].filter((one, i, all) => spots[one] && all.indexOf(one) === i)
  return (
    <>
      {shown.map((one) => {
        const { x, y } = spots[one]!
        const right = x > width / 2
        return (
          <text key={one} class={one === name ? 'lit' : ''} x={right ? Math.min(x + 8, width) : x} y={one === 'swingarm pivot' ? y + 24 : y - 12} text-anchor={right ? 'end' : 'start'}>
            {one}
          </text>
        )
      })}
    </>
  )
}

/** What the hand is at. */
const Ring = ({ spot, name }: { spot: { x: number; y: number }; name: string }) => <circle class="ring" cx={spot.x} cy={spot.y} r={10} data-lit={name} />
