import { Axes } from './Axes.tsx'
import { EndLabels } from './EndLabels.tsx'
import { FieldNames, Fields } from './Fields.tsx'
import { curvePath, type Geometry, geometry, rubberPath, type Frame } from './geometry.ts'
import { textWidth } from './measure.ts'
import { SagLabels } from './SagLabels.tsx'
import { forceWords, type Overlay, type Shown, wantedForce } from './words.ts'

/** Every curve that is drawn, so that all share one scale. */
export const placed = (shown: Shown, frame: Frame, turned: boolean): Geometry =>
  geometry([shown.curve, ...shown.beside.map((one) => one.curve)], frame, turned, wantedForce(shown) ?? 0)

interface PlotProps {
  shown: Shown
  place: Geometry
  /** Tells the patterns of several charts on a page apart. */
  id: string
  strokeWords: string
  oneSpring: boolean
}

/** The chart inside a drawing, the same beside the leg, turned, and on paper. */
export function Plot({ shown, place, id, strokeWords, oneSpring }: PlotProps) {
  const { curve, beside } = shown
  const rubber = rubberPath(place, curve)
  return (
    <g>
      <Fields place={place} curve={curve} id={id} />
      {beside.map((one) => (
        <Beside key={one.kind} place={place} overlay={one} />
      ))}
      <path class="curve" data-curve="working" d={curvePath(place, curve, 'working')} />
      {rubber && <path class="curve-rubber" data-curve="rubber" d={rubber} />}
      <FieldNames place={place} curve={curve} measure={textWidth} />
      <Axes place={place} strokeWords={strokeWords} forceWords={forceWords(shown.end, oneSpring)} />
      <EndLabels place={place} shown={shown} measure={textWidth} />
      <SagLabels place={place} shown={shown} measure={textWidth} />
    </g>
  )
}

/** Dashed over a casing of the ground, so that it reads on every field. */
function Beside({ place, overlay: { kind, curve } }: { place: Geometry; overlay: Overlay }) {
  const d = curvePath(place, curve, 'working')
  return (
    <g data-curve={kind}>
      <path class="casing" d={d} />
      <path class={`curve-beside curve-${kind}`} d={d} />
    </g>
  )
}
