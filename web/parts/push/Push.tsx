import type { PushReport, PushRival, Quantity } from '../../core/report.ts'
import { pushOld, report } from '../../store/index.ts'
import { Figure } from '../figure/Figure.tsx'
import { number, withUnit } from '../figure/text.ts'
import { PushChart } from './PushChart.tsx'
import '../figure/plaintable.css'
import './push.css'

/** What a bench push says, and what follows. */
export function PushVerdict() {
  const push = report.value?.push
  if (!push) {
    return (
      <p class="quiet" data-push="none">
        {pushOld.value
          ? 'The push is being worked out.'
          : 'Push one leg in slowly on scales, read stroke and force, and see what the gap is; of a sealed cartridge, whether it still holds its charge. No sag shows that.'}
      </p>
    )
  }
  return (
    <div class="push" data-push={push.refused ? 'refused' : push.states.join(' ') || 'open'} data-old={pushOld.value}>
      <div aria-live="polite">
        <p class={push.refused ? 'attend' : 'push-verdict'}>
          {push.verdict}
          {pushOld.value && <small> Of the push before, being worked out again.</small>}
        </p>
        {[...push.words, ...push.corrects].map((words) => (
          <p key={words}>{words}</p>
        ))}
      </div>
      {push.corrects.length > 0 && (
        <a class="push-choose" href="#front.push_correct">
          Let these points correct, or only compare them ›
        </a>
      )}
    </div>
  )
}

/** Behind it: a curve for each explanation, and what each misses the points by. */
export function PushFigures() {
  const push = report.value?.push
  if (!push || push.rivals.length === 0) return null
  return (
    <div class="push">
      <Rivals push={push} />
      <PushChart push={push} />
      <details>
        <summary>What each misses the points by</summary>
        <Missed push={push} />
      </details>
      {push.note && <p class="quiet">{push.note}</p>}
    </div>
  )
}

/** A row for each explanation, likeliest first; under it what else it says. */
function Rivals({ push }: { push: PushReport }) {
  return (
    <table class="plain-table push-table" data-table="push">
      <caption class="aside">Explanations of the push, likeliest first</caption>
      <thead>
        <tr>
          <td />
          <th scope="col">in 100</th>
          <th scope="col">gap that fits mm</th>
          <th scope="col">gap by now mm</th>
        </tr>
      </thead>
      <tbody>
        {push.rivals.map((rival) => (
          <Row key={rival.state} rival={rival} />
        ))}
      </tbody>
    </table>
  )
}

function Row({ rival }: { rival: PushRival }) {
  const more = [rival.moved && `oil out of the cartridge ${withUnit(rival.moved)}`, rival.friction && `friction ${withUnit(rival.friction)}`].filter(Boolean)
  return (
    <>
      <tr>
        <th scope="row" class={rival.open ? 'in-question' : ''}>
          {rival.label}
        </th>
        <td>{number(rival.chance)}</td>
        <td>
          <Maybe of={rival.gap} />
        </td>
        <td>
          <Maybe of={rival.gap_now} />
        </td>
      </tr>
      <tr class="push-more">
        <td colSpan={4}>{rival.fits ? more.join(', ') : 'does not fit these points'}</td>
      </tr>
    </>
  )
}

const Maybe = ({ of }: { of: Quantity | null }) => (of ? <Figure of={of} unit="" /> : <>–</>)

/** The table behind the chart: read less expected; what happens in no such leg is marked. */
function Missed({ push }: { push: PushReport }) {
  return (
    <div class="table-room" role="region" tabIndex={0} aria-label="What each explanation misses the points by">
      <table class="plain-table push-table">
        <caption>Force read less expected, N. * more than can happen.</caption>
        <thead>
          <tr>
            <th scope="col">mm</th>
            <th scope="col">read</th>
            {push.rivals.map((rival) => (
              <th key={rival.state} scope="col">
                {rival.label}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {push.points.map(({ stroke, force }, i) => (
            <tr key={stroke.text}>
              <th scope="row">{number(stroke)}</th>
              <td>
                <Figure of={force} unit="" />
              </td>
              {push.rivals.map((rival) => (
                <td key={rival.state}>
                  {number(rival.residuals[i]!)}
                  {rival.doubtful[i] && ' *'}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}
