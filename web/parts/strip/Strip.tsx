import type { Curve, End, Figures, Setup } from '../../core/report.ts'
import { ahead, reports } from '../../store/index.ts'
import { type Looked, lookedAt } from '../../store/looked.ts'
import { address, endAside, endLooked, place, side } from '../../store/place.ts'
import { number, plusMinus } from '../figure/text.ts'
import { Rule } from './Rule.tsx'
import './strip.css'

const END_WORDS = { front: 'Front', rear: 'Rear' } as const
const WORDS = { answer: 'answer', try: 'try', built: 'built', 'as found': 'as found', state: 'one state' } as const

/** The few results that matter now, in view while inputs change: of the end, and of the setup, that is looked at. */
export function Strip() {
  const end = endLooked()
  const view = reports[end].value
  const looked = lookedAt(end)
  // Figures ahead of their report are the answer's.
  const newer = looked?.kind === 'answer' && side.value === 'answer' ? ahead[end].value : null
  const figures = newer ?? figuresOf(looked)
  const stale = newer ? 'no' : view.stale
  return (
    <section class={`strip ${stale === 'last good' ? 'strip-old' : ''}`} aria-label={`Results, ${END_WORDS[end].toLowerCase()}`} data-strip={end} data-stale={stale} data-looked={looked?.kind}>
      {figures ? <Rule figures={figures} /> : <span class="rule" />}
      <ul>
        <li>
          <Which end={end} words={stateWords(looked, stale)} />
        </li>
        <Result end={end} name="Free sag" of={figures?.setup.free_sag} unit="mm" />
        <Result end={end} name="Rider sag" of={figures?.setup.rider_sag} unit="mm" />
        <Result end={end} name="Full travel" of={figures?.setup.end_multiple} unit="× load" />
      </ul>
    </section>
  )
}

function stateWords(looked: Looked | null, stale: string): string {
  if (stale === 'last good') return 'last good'
  if (!looked) return 'no answer'
  if (stale === 'saved') return 'saved'
  return looked.problem ? `${WORDS[looked.kind]}: no` : WORDS[looked.kind]
}

/** Which end, and which of its setups; where a place speaks of both, a tap shows the other. */
function Which({ end, words }: { end: End; words: string }) {
  const own = place.value === 'front' || place.value === 'rear'
  const says = <span class="strip-says">{words}</span>
  if (own)
    return (
      <span class="strip-end">
        <b>{END_WORDS[end]}</b> {says}
      </span>
    )
  const other = end === 'front' ? 'rear' : 'front'
  return (
    <button type="button" class="strip-end" onClick={() => (endAside.value = other)}>
      <b>{END_WORDS[end]} ⇄</b> {says}
      <span class="aside">Show the {other}</span>
    </button>
  )
}

function Result({ end, name, of, unit }: { end: End; name: string; of: Setup['free_sag'] | undefined; unit: string }) {
  const band = of ? plusMinus(of) : ''
  return (
    <li>
      <a href={address(end)}>
        <span class="strip-name">{name}</span>{' '}
        <span class="result">
          {of && (
            <>
              <b>{number(of)}</b> <span class="unit">{unit}</span> <small>{band}</small>
            </>
          )}
        </span>
      </a>
    </li>
  )
}

/** The same of a report; the curve ends at full travel, where the core worked the force there out. */
function figuresOf(looked: Looked | null): Figures | null {
  if (!looked?.setup) return null
  const travel = lastOf(looked.curve) ?? lastOf(looked.report.curve)
  return travel ? { setup: looked.setup, travel, windows: looked.report.windows } : null
}

const lastOf = (curve: Curve | null) => curve?.stroke.at(-1)
