import type { Geometry } from './geometry.ts'

const TICK = 6

/** Both axes with their units. Drawn here: the library's axes bring along one for selecting elements, larger than the chart. */
export function Axes({ place, strokeWords, forceWords }: { place: Geometry; strokeWords: string; forceWords: string }) {
  const { frame, turned, strokeScale, forceScale } = place
  const few = Math.abs(frame.bottom - frame.top) < 100 ? 2 : 4
  const across = (turned ? strokeScale : forceScale).ticks(frame.right - frame.left < 240 ? 3 : 5)
  const up = (turned ? forceScale : strokeScale).ticks(few)
  return (
    <g class="axes">
      <path class="axis" d={`M${frame.left} ${frame.top}V${frame.bottom}H${frame.right}`} />
      {across.map((value) => (
        <g key={value} class="tick" data-axis="across" transform={`translate(${(turned ? strokeScale : forceScale)(value)},${frame.bottom})`}>
          <path class="axis" d={`M0 0V${TICK}`} />
          <text y={TICK + 16} text-anchor="middle">
            {value}
          </text>
        </g>
      ))}
      {up.map((value) => (
        <g key={value} class="tick" data-axis="up" transform={`translate(${frame.left},${(turned ? forceScale : strokeScale)(value)})`}>
          <path class="axis" d={`M0 0H${-TICK}`} />
          <text class="cased" x={-TICK - 5} y={5} text-anchor="end">
            {value}
          </text>
        </g>
      ))}
      <text x={frame.right} y={frame.bottom + 44} text-anchor="end">
        {turned ? strokeWords : forceWords}
      </text>
      <text class="cased" x={frame.start ?? 0} y={frame.top - 12}>
        {turned ? forceWords : strokeWords}
      </text>
    </g>
  )
}
