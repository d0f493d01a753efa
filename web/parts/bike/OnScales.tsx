import type { FieldPath } from '../../generated/schema.ts'
import { Field } from '../field/Field.tsx'

const LEVELS: [words: string, rear: FieldPath, front: FieldPath][] = [
  ['alone', 'bike.rear_axle', 'bike.front_axle'],
  ['aboard', 'rider.rear_axle', 'rider.front_axle'],
]

// One line weight; seat and tail, tank, frame, swingarm, engine, fork with bars, mudguard.
const BODY =
  'M56 24C70 40 88 48 112 50L168 54M56 24L64 23L110 36L170 40C176 30 190 24 206 24L232 30L236 38M168 54L178 78M112 50L150 92M236 38L240 62L222 100L178 98M178 78L222 72L222 100' +
  'M186 74h22v-8h-22zM84 112L160 94M160 94L178 98M236 14L282 112M246 20L256 14M236 14L222 8L208 12M232 30L246 36M228 40L246 44M244 46C266 44 292 54 316 66'

/** The bike on two scales, each weight under its wheel. */
export function OnScales() {
  return (
    <div class="on-scales">
      <svg viewBox="0 0 358 168" role="img" aria-label="A bike from its side with a scale under each wheel, the front wheel at the right.">
        <g class="thin">
          <circle cx="80" cy="113" r="38" />
          <circle cx="282" cy="113" r="41" />
          <circle cx="80" cy="113" r="27" />
          <circle cx="282" cy="113" r="31" />
          <path d="M1 167H357" />
        </g>
        <g class="thick">
          <path d={BODY} />
          <circle cx="80" cy="113" r="7" />
          <circle cx="282" cy="113" r="7" />
          <circle cx="160" cy="94" r="8" />
          <path d="M36 153h90v14h-90zM237 155h90v12h-90z" />
        </g>
      </svg>
      {LEVELS.map(([words, rear, front]) => (
        <div key={words} class="weights" role="group" aria-label={`Axle weights, ${words === 'alone' ? 'bike alone' : 'rider aboard'}`}>
          <Field path={rear} label={`rear, ${words}`} />
          <Field path={front} label={`front, ${words}`} />
        </div>
      ))}
    </div>
  )
}
