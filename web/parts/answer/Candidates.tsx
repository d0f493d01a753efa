import { useSignal } from '@preact/signals'
import type { Candidate, End, EndNone, EndOk, Sure } from '../../core/report.ts'
import { reports } from '../../store/index.ts'
import { sized } from '../../store/looked.ts'
import { look } from '../../store/place.ts'
import { number, stepOf, stepText, withUnit } from '../figure/text.ts'
import { build, tryOut } from '../pair/build.ts'
import { Tally } from './HowSure.tsx'
import './candidates.css'

/** The springs on offer beside each other; one opens in place, and can be tried or built there. */
export function Candidates({ end }: { end: End }) {
  const report = sized(reports[end].value.report)
  if (!report) return null
  const air = report.candidates[0]?.pressure != null
  return (
    <div class={`candidates ${air ? 'of-air' : ''}`}>
      <div class="candidates-head" aria-hidden="true">
        <span>{air ? 'bar' : 'N/mm'}</span>
        {!air && <span>preload</span>}
        <span>{secondName(report, end)}</span>
        <span>Hz</span>
        <span>{report.sure ? 'of 10' : ''}</span>
      </div>
      {report.candidates.map((one) => (
        <One key={one.key} end={end} one={one} air={air} report={report} />
      ))}
    </div>
  )
}

const secondName = (report: EndOk | EndNone, end: End) => (end === 'front' && report.candidates.some((one) => one.gap) ? 'gap' : 'free sag')

function One({ end, one, air, report }: { end: End; one: Candidate; air: boolean; report: EndOk | EndNone }) {
  const open = useSignal(false)
  const gap = end === 'front' ? one.gap : undefined
  const id = `candidate-${end}-${one.key}`
  const about = aboutOf(one)
  return (
    <section class={`candidate ${one.relation === 'chosen' ? 'chosen' : ''}`} data-candidate={stepText(one)}>
      <button type="button" class="candidate-row" aria-expanded={open.value} aria-controls={id} onClick={() => (open.value = !open.value)}>
        <span>
          <b>{one.pair ? `${number(one.pair.left)} + ${number(one.pair.right)}` : stepText(one)}</b> {about && <span class="quiet">{about}</span>}
          <span class="aside">, {stepOf(one).unit}</span>
        </span>
        {!air && (
          <span>
            <span class="aside">preload </span>
            {number(one.preload)}
          </span>
        )}
        <span>
          <span class="aside">{secondName(report, end)} </span>
          {number(gap ?? one.free_sag)}
        </span>
        <span>{number(one.frequency)}</span>
        <Share sure={report.sure} one={one} />
      </button>
      <div id={id} class="candidate-more" hidden={!open.value}>
        {open.value && <More end={end} one={one} />}
      </div>
    </section>
  )
}

/** What a candidate is to the hand, in a word or two. */
function aboutOf(one: Candidate): string {
  if (one.relation === 'chosen') return one.fitted ? 'keep' : 'the answer'
  if (one.fitted) return 'fitted'
  return one.vetoes.length > 0 ? 'won’t work' : ''
}

function Share({ sure, one }: { sure: Sure | null; one: Candidate }) {
  const count = sure?.counts.find((counted) => counted.rate === stepOf(one).value)?.of_ten ?? 0
  return (
    <span class="candidate-share">
      {count > 0 && <Tally count={count} />}
      <span class="aside">{sure ? `${count} of 10` : ''}</span>
    </span>
  )
}

function More({ end, one }: { end: End; one: Candidate }) {
  const possible = reachable(one)
  return (
    <>
      <p>{words(end, one)}</p>
      {one.vetoes.length > 0 && <p class="veto">Won’t work: {one.vetoes.map((veto) => veto.words).join('; ')}.</p>}
      {against(one) && <p>Against it: {against(one)}.</p>}
      <div class="buttons">
        <button type="button" onClick={() => tryOut(end, one, possible)}>
          Try the {stepText(one)}
        </button>
        {buildable(one) && (
          <button
            type="button"
            onClick={() => {
              build(end, one)
              look('built')
              scrollTo({ top: 0 })
            }}
          >
            Build the {stepText(one)}
          </button>
        )}
      </div>
    </>
  )
}

function words(end: End, one: Candidate): string {
  if (one.pressure) return `Rider sag ${withUnit(one.rider_sag)}, force at full travel ${withUnit(one.end_multiple)} × rider load. Ride frequency ${withUnit(one.frequency)}.`
  const gap = reachable(one) && one.gap ? ` and gap ${withUnit(one.gap)}` : ''
  const sags = end === 'rear' ? `Leaves ${withUnit(one.free_sag)} free sag at ${withUnit(one.rider_sag)} rider sag.` : `Ride frequency ${withUnit(one.frequency)}.`
  return `Needs ${withUnit(one.preload)} preload${gap}. ${sags}`
}

/** What it does not reach, and which of its figures lie outside their windows; of one that can be built. */
function against(one: Candidate): string {
  if (one.vetoes.length > 0) return ''
  const outside = one.criteria.filter((criterion) => criterion.state === 'outside')
  return [...one.short, ...outside].map((reason) => reason.words).join('; ')
}

/** What only sags too little can be built all the same: it is all that some shelf has. */
const buildable = (one: Candidate) => one.vetoes.every((veto) => veto.code === 'preload below')

/** Whether any gap meets the end-of-travel target; where none does, the one beside it is only where the search ended. */
const reachable = (one: Candidate) => one.vetoes.every((veto) => veto.code !== 'end unreachable')
