import { type Axis, axisBottom, axisLeft } from 'd3-axis'
import { select } from 'd3-selection'
import { useLayoutEffect, useRef } from 'preact/hooks'
import type { Geometry } from './geometry.ts'

/** Both axes with their units. d3 draws into groups that Preact leaves alone. */
export function Axes({ place, strokeWords, forceWords }: { place: Geometry; strokeWords: string; forceWords: string }) {
  const { frame, turned, strokeScale, forceScale } = place
  const strokes = strokeScale.ticks(4)
  const forces = forceScale.ticks(5)
  const [across, up] = turned
    ? [axisBottom(strokeScale).tickValues(strokes), axisLeft(forceScale).tickValues(forces)]
    : [axisBottom(forceScale).tickValues(forces), axisLeft(strokeScale).tickValues(strokes)]
  return (
    <g class="axes">
      <Drawn axis={across} x={0} y={frame.bottom} />
      <Drawn axis={up} x={frame.left} y={0} />
      <text x={frame.right} y={frame.bottom + 44} text-anchor="end">
        {turned ? strokeWords : forceWords}
      </text>
      <text x={0} y={frame.top - 12}>
        {turned ? forceWords : strokeWords}
      </text>
    </g>
  )
}

function Drawn({ axis, x, y }: { axis: Axis<number | { valueOf(): number }>; x: number; y: number }) {
  const group = useRef<SVGGElement>(null)
  useLayoutEffect(() => {
    select(group.current!).call(axis.tickFormat(String).tickSizeInner(6).tickSizeOuter(0).tickPadding(5))
  })
  return <g ref={group} transform={`translate(${x},${y})`} />
}
