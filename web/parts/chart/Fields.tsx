import type { Curve } from '../../core/report.ts'
import type { Measure } from './measure.ts'
import { curvePath, fieldPath, type Geometry, hasBand, reader } from './geometry.ts'

/** Springs by solid fill, gas by dots, the slow-fast band by hatching; every field has an ink line round it. */
export function Fields({ place, curve, id }: { place: Geometry; curve: Curve; id: string }) {
  return (
    <g>
      <Patterns id={id} />
      <path class="field-springs" d={fieldPath(place, curve, null, 'springs')} />
      <path class="field" d={fieldPath(place, curve, 'springs', 'slow')} fill={`url(#${id}-gas)`} />
      {hasBand(curve) && (
        <g data-band>
          <path class="field" d={fieldPath(place, curve, 'slow', 'fast')} fill={`url(#${id}-band)`} />
          <path class="edge" d={curvePath(place, curve, 'fast')} />
          <path class="edge" d={curvePath(place, curve, 'slow')} />
        </g>
      )}
      <path class="edge" d={curvePath(place, curve, 'springs')} />
    </g>
  )
}

function Patterns({ id }: { id: string }) {
  return (
    <defs>
      <pattern id={`${id}-gas`} width="5" height="5" patternUnits="userSpaceOnUse">
        <circle class="dot" cx="1.25" cy="1.25" r=".9" />
        <circle class="dot" cx="3.75" cy="3.75" r=".9" />
      </pattern>
      <pattern id={`${id}-band`} width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <line class="hatch" x1="0" x2="0" y1="0" y2="5" />
      </pattern>
    </defs>
  )
}

/** The fields' names, where there is room for them inside. */
export function FieldNames({ place, curve, measure }: { place: Geometry; curve: Curve; measure: Measure }) {
  const mm = place.travel * 0.9
  const springs = reader(curve, 'springs')(mm)
  const slow = reader(curve, 'slow')(mm)
  return (
    <g class="inside">
      {name('springs', 0, springs)}
      {name('gas', springs, slow)}
    </g>
  )

  function name(text: string, low: number, high: number) {
    const room = Math.abs(place.force(high) - place.force(low))
    if (room < (place.turned ? 26 : measure(text) + 12)) return null
    const [x, y] = place.at(mm, (low + high) / 2)
    const middle = place.turned ? Math.min(x, place.frame.right - measure(text) / 2 - 6) : x
    return (
      <text class={text === 'gas' ? 'cased' : ''} x={middle} y={y + 5} text-anchor="middle">
        {text}
      </text>
    )
  }
}
