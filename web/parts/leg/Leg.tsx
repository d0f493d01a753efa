import type { ComponentChildren } from 'preact'
import { useState } from 'preact/hooks'
import type { Curve, Section, StateLooked } from '../../core/report.ts'
import { reports } from '../../store/index.ts'
import { chosen, OverlayChoice } from '../chart/choice.tsx'
import { ChartTitle, ForceChart, springsInOne } from '../chart/ForceChart.tsx'
import { reader } from '../chart/geometry.ts'
import { ChartTable } from '../chart/Table.tsx'
import { turned, TurnButton } from '../chart/turn.tsx'
import { type Looked, lookedIn, pairWords, type Shown, shownOf } from '../chart/words.ts'
import { Beside } from './Beside.tsx'
import { goToPart } from './fields.ts'
import type { PartName } from './layout.ts'
import { Lying } from './Lying.tsx'
import { LegTable } from './Table.tsx'
import { keyMoves, moveTo, strokeShown } from './useStroke.ts'
import { assumedWords, eventAt, spoken } from './words.ts'
import './leg.css'

export interface LegProps {
  /** Opens the fields of a part that is tapped; without, a link to the first of them is followed. */
  onPart?: (part: PartName) => void
  /** What stands beside the part that it turns; without, the part's name and figure. */
  preload?: ComponentChildren
  gap?: ComponentChildren
  springs?: ComponentChildren
  /** The setup that is looked at; without, a try, else the answer, else what is fitted. */
  looked?: Looked
  /** The curve of what is built, where it can lie beside. */
  built?: Curve | null
  /** A state of the cartridge that is laid over the one looked at, dashed. */
  over?: StateLooked | undefined
}

/** The fork in section, with its force hung beside it at the same scale: dragged through its stroke. Where no leg can be drawn, the force alone. */
export function Leg(props: LegProps) {
  const { report, stale } = reports.front.value
  if (!report || report.state === 'refused') return null
  const { looked = lookedIn(report), built = null, over } = props
  const shown = shownOf('front', report, looked, built, over ? { kind: 'state', curve: over.curve, name: over.label } : null)
  if (!shown) return null
  const section = looked.section ?? report.section
  if (!section) return <ForceChart end="front" looked={looked} built={built} />
  return (
    <div class={`leg ${stale === 'last good' ? 'last-good' : ''}`} data-leg={section.kind}>
      <ChartTitle end="front" />
      <Moved {...props} all={shown} section={section} />
    </div>
  )
}

function Moved({ all, section, onPart = goToPart, ...props }: LegProps & { all: Shown; section: Section }) {
  const [right, setRight] = useState(false)
  const leg = section.legs[right ? 1 : 0] ?? section.legs[0]!
  const last = section.stroke.at(-1)!
  const stroke = strokeShown(last)
  // A leg that locks has no curve: the one shown is of another setup, and no point of it is this leg's.
  const follows = last >= section.travel - 0.01
  const force = follows ? reader(all.curve, 'working')(stroke) : null
  const event = eventAt(section, stroke)
  const seen = { ...props, onPart, section, leg, stroke, last, force, shown: chosen(all), oneSpring: springsInOne('front') }
  return (
    <>
      {section.legs.length > 1 && <SideChoice section={section} right={right} choose={setRight} />}
      {turned.value ? <Lying {...seen} /> : <Beside {...seen} />}
      <label class="leg-slider">
        <span>Stroke</span>
        <input
          type="range"
          min={0}
          max={last}
          step={1}
          value={stroke}
          aria-valuetext={spoken(section, leg, stroke, force)}
          onInput={({ currentTarget }) => moveTo(Number(currentTarget.value), last)}
          onKeyDown={(key) => keyMoves(key.key, stroke, last) && key.preventDefault()}
        />
        <output>{Math.round(stroke)} mm</output>
      </label>
      <p class={`leg-event ${event?.bad ? 'attend' : ''}`} data-event={event?.kind}>
        {event?.words}
      </p>
      <div class="leg-choices">
        <OverlayChoice shown={all} />
        <TurnButton />
      </div>
      <details>
        <summary>How it is drawn, figures as a table</summary>
        <p class="quiet leg-note">
          Lengths to scale, widths doubled. Dashed across: the oil when the gap is {section.gap_words}. Dashed outlines: length not measured. {pairWords(all.setup)}
        </p>
        <LegTable section={section} leg={leg} />
        <ChartTable shown={seen.shown} oneSpring={seen.oneSpring} />
        <p class="quiet">{assumedWords(leg)}</p>
      </details>
    </>
  )
}

function SideChoice({ section, right, choose }: { section: Section; right: boolean; choose: (right: boolean) => void }) {
  return (
    <div class="leg-sides" role="group" aria-label="Leg drawn">
      {section.legs.map((leg, i) => (
        <button key={leg.side} type="button" aria-pressed={right === (i === 1)} onClick={() => choose(i === 1)}>
          {i === 1 ? 'Right leg' : 'Left leg'}
        </button>
      ))}
    </div>
  )
}
