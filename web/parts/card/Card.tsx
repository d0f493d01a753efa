import { useSignal } from '@preact/signals'
import type { Check, End, Report } from '../../core/report.ts'
import type { FieldPath } from '../../generated/schema.ts'
import { head } from '../../store/actions.ts'
import { job, openId, report, reports } from '../../store/index.ts'
import { lookedAt } from '../../store/looked.ts'
import { optionsOf } from '../../store/offer.ts'
import { onPaper } from '../../store/paper.ts'
import { PLAN } from '../../store/plan.ts'
import { howManyMade } from '../../store/ticks.ts'
import { Checks } from '../bench/Checks.tsx'
import { Filling } from '../bench/Filling.tsx'
import { Message } from '../bench/Message.tsx'
import { Service } from '../bench/Service.tsx'
import { Caution } from '../caution/Caution.tsx'
import { ShareJob } from '../door/ShareJob.tsx'
import { FieldFold } from '../fold/FieldFold.tsx'
import { Fold } from '../fold/Fold.tsx'
import { Pair } from '../pair/Pair.tsx'
import { Frame } from '../shell/Frame.tsx'
import { later } from '../shell/later.tsx'
import { wide } from '../shell/wide.ts'
import { Found } from './Found.tsx'
import { builtWords, leftOf, sameSetup } from './left.ts'
import { Lists } from './Lists.tsx'
import { PrintedQr } from './PrintedQr.tsx'
import { Lined, Reading } from './Reading.tsx'
import { CONDITIONS, restAt, restsOn } from './rests.ts'
import { cardRows } from './rows.ts'
import { SetupTable } from './Table.tsx'
import './card.css'
import './print.css'

const Options = later(() => import('../options/Options.tsx').then(({ Options }) => Options))

/** What to do before the caps come off; torque and first ride stand among the checks. */
const CARD_CAUTIONS = ['gas', 'springs', 'stand', 'shock']

const ENDS = ['front', 'rear'] as const

/** What was built, to be printed and handed over; the whole card is one printed page. */
export function Card() {
  const now = report.value
  const sharing = useSignal(false)
  return (
    <Frame room="card" name="Card">
      <div class="lead">
        <Pair ends={ENDS} />
        <div class="answer" data-answer="card" aria-live="polite">
          {ENDS.map((end) => (
            <AnswerOf key={end} end={end} />
          ))}
        </div>
        <div class="card-buttons">
          <button type="button" class="filled" disabled={!now} onClick={printCard}>
            Print
          </button>
          <button type="button" aria-expanded={sharing.value} onClick={() => (sharing.value = !sharing.value)}>
            Share
          </button>
        </div>
        {sharing.value && <ShareJob id={openId.value} key={openId.value} />}
        <Named />
      </div>
      {now && (
        <div class="picture card-folded">
          <Fold place="card" name="options" title="Options" says={offered(now)}>
            <Options />
          </Fold>
          <Fold place="card" name="sheet" title="The whole card" says="one printed page" forced={wide.value}>
            <article class={onPaper.value === 'card' ? 'card paper' : 'card'} aria-label="Card">
              <Sheet report={now} />
            </article>
          </Fold>
        </div>
      )}
      {now && (
        <div class="why">
          <Fold place="card" name="checks" title="Before you hand it over" says={countOf(now.reassembly)}>
            <Checks checks={now.reassembly} />
            <Filling />
          </Fold>
          <Fold place="card" name="ride" title="First ride" says={countOf(now.first_ride)}>
            <Checks checks={now.first_ride} />
          </Fold>
          {PLAN.card.folds.map((plan) => (
            <FieldFold key={plan.name} place="card" plan={plan} shown={[]} lead={<Service />} />
          ))}
          <Fold place="card" name="message" title="As a message" says="for the customer">
            <Message />
          </Fold>
          <Fold place="card" name="cautions" title="Cautions" says="gas, springs, stand, torque">
            <Caution keys={now.cautions.map(({ key }) => key)} />
          </Fold>
        </div>
      )}
    </Frame>
  )
}

function printCard(): void {
  onPaper.value = 'card'
  // Drawn first: the offer may have been on paper before.
  requestAnimationFrame(() => print())
}

/** How many options there are, and what each costs. */
function offered(now: Report): string {
  const count = optionsOf(job.value.offer).length
  if (count === 0) return 'none yet'
  return `${count}: ${now.offer?.options.map(({ bill }) => bill?.total ?? 'no total').join(', ')}`
}

/** What the card calls the job. */
function Named() {
  return (
    <div class="named">
      <label class="ask">
        <span>Name</span>
        <input class="wide" type="text" autocomplete="off" maxLength={200} value={job.value.name} onInput={(event) => head({ name: event.currentTarget.value })} />
      </label>
      <label class="ask">
        <span>Owner</span>
        <input class="wide" type="text" autocomplete="off" maxLength={200} value={job.value.owner ?? ''} onInput={(event) => head({ owner: event.currentTarget.value })} />
      </label>
      <label class="ask">
        <span>Date</span>
        <input class="wide" type="date" value={job.value.date} onInput={(event) => head({ date: event.currentTarget.value })} />
      </label>
    </div>
  )
}

const countOf = (checks: Check[]) => `${howManyMade(checks)} of ${checks.length}`

function Sheet({ report: now }: { report: Report }) {
  const originOf = (path: string) => now.fields[path as FieldPath]?.origin ?? null
  const left = (end: End) => leftOf(lookedAt(end))
  const rows = (end: End) => cardRows(end, reports[end].value.report, originOf, left(end), now.sags_told)
  const { full, besides } = restsOn(now)
  const conditions = CONDITIONS.map((path) => restAt(now, path)).filter((rest) => rest !== null)
  return (
    <>
      <Head now={now} />
      <AnswerOf end="front" />
      <AnswerOf end="rear" />
      <SetupTable rows={{ front: rows('front'), rear: rows('rear') }} heads={{ front: left('front')?.head ?? 'draft', rear: left('rear')?.head ?? 'draft' }} />
      <p class="card-note">
        <b>Conditions</b>{' '}
        {conditions.map((rest) => (
          <span key={rest.label} class="run">
            <Reading rest={rest} />
          </span>
        ))}
        {now.service && (
          <>
            <b>Hours</b> {now.service.ends.map(({ words }) => words).join(' ')}
          </>
        )}
      </p>
      <Found now={now} />
      <h3>
        Based on{' '}
        <span class="card-key">
          <span class="measured">measured</span> <span class="stated">stated</span> <span class="assumed">assumed</span>
        </span>
      </h3>
      <ul class="card-rests">
        {full.map((rest) => (
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
      <PrintedQr />
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
        {now.use_label}, rider {rider && <Lined text={rider.text} origin={rider.state.origin} />} {rider?.band} in kit, {now.posture}. {dateText(now.header.date)}
        {now.header.invented && <b> Demo, invented.</b>}
      </p>
    </header>
  )
}

/** What was built, and the recommendation where it differs; a draft for as long as nothing is. */
function AnswerOf({ end }: { end: End }) {
  const { report: done, stale, problems } = reports[end].value
  const answer = done?.state === 'ok' ? `${done.answer} ${done.also}`.trim() : (problems[0]?.message ?? 'No answer yet.')
  const looked = lookedAt(end)
  const built = looked?.kind === 'built' ? looked.setup : null
  const words = built ? builtWords(end, built) : ''
  return (
    <p class="card-answer" data-card-answer={end} data-left={built ? 'built' : 'draft'}>
      <b>{end === 'front' ? 'Front' : 'Rear'}</b>, {built ? `built: ${words}` : `draft, not built: ${answer}`}
      {built && !sameSetup(end, built, done) && <span> Recommended: {answer}</span>}
      {stale === 'last good' && <strong class="attend"> Last good result: an entry has been refused since.</strong>}
    </p>
  )
}

/** A date as people write it; one that is no date stays as it was typed. */
function dateText(date: string): string {
  const day = new Date(`${date}T12:00:00`)
  return Number.isNaN(day.getTime()) ? date : `${day.toLocaleDateString('en-GB', { dateStyle: 'long' })}.`
}
