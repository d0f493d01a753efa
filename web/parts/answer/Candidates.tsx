import type { Candidate, End, EndNone, EndOk, NextReading } from '../../core/report.ts'
import { type } from '../../store/actions.ts'
import { reports } from '../../store/index.ts'
import { stepOf, stepText, told } from '../figure/told.ts'
import './candidates.css'

/** Why this spring, and what its neighbours and the fitted one would do. */
export function Candidates({ end }: { end: End }) {
  const { report } = reports[end].value
  if (!report || report.state === 'refused') return null
  const near = report.state === 'ok' ? neighbours(report) : nearest(report)
  const others = report.candidates.filter((one) => one.relation !== 'chosen' && !near.some(([, shown]) => shown === one))
  return (
    <div class="candidates">
      {report.state === 'ok' && <Why {...report} />}
      {near.map(([title, one]) => (
        <OneCandidate key={title} end={end} title={title} one={one} />
      ))}
      {others.length > 0 && (
        <details>
          <summary>Others on offer: {others.length}</summary>
          {others.map((one) => (
            <OneCandidate key={stepOf(one).value} end={end} title="" one={one} />
          ))}
        </details>
      )}
      {report.measure_next.length > 0 && <MeasureNext readings={report.measure_next} />}
    </div>
  )
}

/** The readings that would narrow the answer most, each a way to its field. */
function MeasureNext({ readings }: { readings: NextReading[] }) {
  return (
    <section data-measure-next>
      <h3>Measure next</h3>
      {readings.map(({ path, words, how }) => (
        <p key={path}>
          <a href={`#${path}`} title={how}>
            {words} ›
          </a>
        </p>
      ))}
    </section>
  )
}

function Why({ chosen, why, holds_for }: EndOk) {
  return (
    <section>
      <h3>Why {stepText(chosen)}</h3>
      <p>{why.join(' ')}</p>
      {holds_for && <p class="quiet">{holds_for.words}</p>}
    </section>
  )
}

function OneCandidate({ end, title, one }: { end: End; title: string; one: Candidate }) {
  const step = stepText(one)
  return (
    <section data-candidate={step}>
      <h3>
        {title && `${title}, `}
        <button type="button" class="link" onClick={() => tryOut(end, one)}>
          {step}
          <span class="aside"> {stepOf(one).unit}: try it</span> ›
        </button>
      </h3>
      <p>{words(end, one)}</p>
      {one.vetoes.length > 0 && <p class="veto">Barred: {one.vetoes.map((veto) => veto.words).join('; ')}.</p>}
    </section>
  )
}

function words(end: End, one: Candidate): string {
  if (one.pressure) return `Leaves ${told(one.rider_sag)} rider sag, ends at ${told(one.end_multiple)} × load. Rides at ${told(one.frequency)}.`
  const gap = reachable(one) && one.gap ? ` and gap ${told(one.gap)}` : ''
  const sags = end === 'rear' ? `Leaves ${told(one.free_sag)} free sag at ${told(one.rider_sag)} rider sag.` : `Rides at ${told(one.frequency)}.`
  return `Wants ${told(one.preload)} preload${gap}. ${sags}`
}

/** Whether any gap meets the end-of-travel target; where none does, the one beside it is only where the search ended. */
const reachable = (one: Candidate) => one.vetoes.every((veto) => veto.code !== 'end unreachable')

/** Put a candidate where it can be tried beside the answer. */
function tryOut(end: End, one: Candidate): void {
  if (one.pressure) return type('front.tried_pressure', `${one.pressure.value} bar`, 'stated')
  type(`${end}.tried_rate`, `${one.rate.value} N/mm`, 'stated')
  type(`${end}.tried_preload`, `${one.preload.value} mm`, 'stated')
  if (reachable(one) && one.gap) type('front.tried_gap', `${one.gap.value} mm`, 'stated')
}

function neighbours({ candidates, leave }: EndOk): [string, Candidate][] {
  const found: [string, Candidate | undefined][] = [
    ['One softer', candidates.find((one) => one.relation === 'one step softer')],
    ['One stiffer', candidates.find((one) => one.relation === 'one step stiffer')],
    ['Leave it', leave ? undefined : candidates.find((one) => one.fitted)],
  ]
  const fitted = found[2]![1]
  // A neighbour that is the fitted spring stands once, under what it means for the hand.
  return found.filter((pair): pair is [string, Candidate] => pair[1] !== undefined && (pair[0] === 'Leave it' || pair[1] !== fitted))
}

/** Where no spring fits, the three that miss by least, the fitted one named. */
function nearest({ candidates }: EndNone): [string, Candidate][] {
  const ranked = [...candidates].sort((a, b) => a.vetoes.length - b.vetoes.length || a.key - b.key).slice(0, 3)
  return ranked.map((one) => [one.fitted ? 'Fitted now' : 'Near', one])
}
