import { useLayoutEffect, useRef } from 'preact/hooks'
import type { End, Report } from '../../core/report.ts'
import type { FieldPath } from '../../generated/schema.ts'
import { report, reports } from '../../store/index.ts'
import { Caution } from '../caution/Caution.tsx'
import { Lists } from './Lists.tsx'
import { Lined, Reading } from './Reading.tsx'
import { CONDITIONS, restAt, restsOn } from './rests.ts'
import { cardRows } from './rows.ts'
import { SetupTable } from './Table.tsx'
import './card.css'
import './print.css'

/** What to do before the caps come off; torque and first ride stand among the checks. */
const CARD_CAUTIONS = ['gas', 'springs', 'stand', 'shock']

/** The card: the whole job on one printed page. */
export function Card() {
  const place = useRef<HTMLElement>(null)
  useLayoutEffect(() => markForPrint(place.current), [report.value === null])
  if (!report.value) return null
  return (
    <section class="part" id="card">
      <h2>Card</h2>
      <button type="button" class="filled print-button" onClick={() => print()}>
        Print the card
      </button>
      <article class="card" ref={place} aria-label="Card">
        <Sheet report={report.value} />
      </article>
    </section>
  )
}

/** The print style hides whatever stands beside the card and these. */
function markForPrint(card: HTMLElement | null): void {
  for (let around = card?.parentElement; around; around = around.parentElement) around.classList.add('prints')
}

function Sheet({ report: now }: { report: Report }) {
  const originOf = (path: string) => now.fields[path as FieldPath]?.origin ?? null
  const rows = (end: End) => cardRows(end, reports[end].value.report, originOf)
  const { told, besides } = restsOn(now)
  const conditions = CONDITIONS.map((path) => restAt(now, path)).filter((rest) => rest !== null)
  return (
    <>
      <Head now={now} />
      <AnswerOf end="front" />
      <AnswerOf end="rear" />
      <SetupTable rows={{ front: rows('front'), rear: rows('rear') }} />
      <p class="card-note">
        <b>Conditions</b>{' '}
        {conditions.map((rest) => (
          <span key={rest.label} class="run">
            <Reading rest={rest} />
          </span>
        ))}
      </p>
      <h3>
        Rests on{' '}
        <span class="card-key">
          <span class="measured">measured</span> <span class="stated">stated</span> <span class="assumed">assumed</span>
        </span>
      </h3>
      <ul class="card-rests">
        {told.map((rest) => (
          <li key={rest.label}>
            <Reading rest={rest} />
          </li>
        ))}
      </ul>
      {besides.length > 0 && (
        <p class="card-note">
          <b>Assumed besides, from practice:</b>{' '}
          {besides.map(({ label, text, state }) => (
            <span key={label} class="run">
              {label} <span class={state.origin ?? ''}>{text}</span>
            </span>
          ))}
        </p>
      )}
      <Lists report={now} />
      <div class="card-cautions">
        <Caution keys={CARD_CAUTIONS} />
      </div>
      <p class="card-note">
        Figures without a line are worked out. {now.header.invented && 'Demo, invented. '}
        {now.left_out}
      </p>
      <p class="card-hand">
        Built by <span class="blank" /> checked by <span class="blank" />
      </p>
    </>
  )
}

function Head({ now }: { now: Report }) {
  const rider = restAt(now, 'rider.mass')
  return (
    <header>
      <h3 class="card-name">{now.header.name || 'Bike without a name'}</h3>
      <p>
        {now.use_label}, rider {rider && <Lined text={rider.text} origin={rider.state.origin} />} {rider?.band} kitted, {now.posture}. {dateText(now.header.date)}
        {now.header.invented && <b> Demo, invented.</b>}
      </p>
    </header>
  )
}

function AnswerOf({ end }: { end: End }) {
  const { report: done, stale, problems } = reports[end].value
  const words = done?.state === 'ok' ? done.answer : (problems[0]?.message ?? 'No answer yet.')
  return (
    <p class="card-answer" data-card-answer={end}>
      <b>{end === 'front' ? 'Front' : 'Rear'}</b> {words}
      {stale === 'last good' && <strong class="attend"> Last good result: an entry has been refused since.</strong>}
    </p>
  )
}

/** A date as people write it; one that is no date stays as it was typed. */
function dateText(date: string): string {
  const day = new Date(`${date}T12:00:00`)
  return Number.isNaN(day.getTime()) ? date : `${day.toLocaleDateString('en-GB', { dateStyle: 'long' })}.`
}
