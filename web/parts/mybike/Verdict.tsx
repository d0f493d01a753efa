import { useEffect } from 'preact/hooks'
import { ask, askFront, asked, front, isSaid, open, reply, said, silent, startAgain, type Verdict as Found } from '../../store/mybike.ts'
import { schema } from '../../store/schema.ts'
import { withUnit } from '../figure/text.ts'
import { Figure } from '../figure/Figure.tsx'
import { Mark } from '../figure/Mark.tsx'
import { TravelRule } from '../figure/TravelRule.tsx'
import { Tally } from '../answer/HowSure.tsx'
import './verdict.css'

/** What the core makes of the readings; what stands in its way, with the way there. */
export function Verdict({ of }: { of: 'front' | 'rear' }) {
  useEffect(() => {
    if (!reply.value) void ask()
  }, [])
  const found = reply.value?.found
  if (!found) {
    return (
      <>
        <h2 tabIndex={-1}>Your verdict</h2>
        <p role={silent.value ? 'alert' : 'status'} class={silent.value ? 'attend' : ''}>
          {silent.value || 'Working it out.'}
        </p>
        {silent.value && (
          <button type="button" onClick={() => void ask()}>
            Try again
          </button>
        )}
      </>
    )
  }
  const told = of === 'front' ? found.front : found.verdict
  if (told) return <Told of={told} />
  const missing = of === 'front' && found.missing.length === 0 ? found.missing_front : found.missing
  return (
    <>
      <h2 tabIndex={-1}>Not yet</h2>
      {found.problems.map(({ path, message, limit, way_out }) => (
        <p key={path} class="attend">
          {[message, limit, way_out].filter(Boolean).join(' ')}
        </p>
      ))}
      <p>{missing.length > 0 ? 'These are still to be answered:' : 'Your answers:'}</p>
      <Answers paths={missing.length > 0 ? missing : undefined} />
    </>
  )
}

function Told({ of }: { of: Found }) {
  return (
    <div data-finding={of.finding}>
      <h2 tabIndex={-1} class="mybike-said">
        {of.opening} <strong>{of.claim}</strong> <span>{of.rest}</span>
      </h2>
      <Chances times={of.times} outOf={of.out_of} />
      <Sags of={of} />
      {of.height && <p>{of.height}</p>}
      <p class="mybike-caution" role="note">
        <strong>{of.do_not}</strong> {of.do_not_more}
      </p>
      {of.narrows && <p>{of.narrows}</p>}
      {of.axle === 'rear' && !front.value && (
        <button type="button" class="mybike-front" onClick={askFront}>
          Check the front too: five more readings
        </button>
      )}
      <details>
        <summary>Your answers</summary>
        <Answers />
        <button type="button" onClick={startAgain}>
          Clear them and start again
        </button>
      </details>
      {of.how.length > 0 && (
        <details>
          <summary>How this is worked out</summary>
          {of.how.map((words) => (
            <p key={words}>{words}</p>
          ))}
        </details>
      )}
      <details>
        <summary>Other things it could be</summary>
        <ul>
          {of.others.map((words) => (
            <li key={words}>{words}</li>
          ))}
        </ul>
      </details>
    </div>
  )
}

/** So many chances as strokes, the rest dashed. */
function Chances({ times, outOf }: { times: number; outOf: number }) {
  if (outOf === 0) return null
  return (
    <p class="mybike-tally" aria-hidden="true">
      <Tally count={times} />
      <svg width={6 * (outOf - times) + 4} height="20">
        {Array.from({ length: outOf - times }, (_, i) => (
          <line key={i} x1={6 * i + 4} x2={6 * i + 4} y1="2" y2="18" stroke-dasharray="3 3" />
        ))}
      </svg>
    </p>
  )
}

function Sags({ of }: { of: Found }) {
  const spots = of.sags.map(({ mark, middle, usual }) => ({ mark, at: middle.value, low: usual.low, high: usual.high }))
  const words = of.sags.map(({ label, middle, usual }) => `${label}: ${withUnit(middle)}, usual ${Math.round(usual.low)} to ${Math.round(usual.high)} mm`).join('; ')
  return (
    <div class="mybike-sags">
      <TravelRule travel={of.travel.value} spots={spots} said={words} />
      <p class="quiet mybike-scale" aria-hidden="true">
        <span>0</span>
        <span>{withUnit(of.travel)}</span>
      </p>
      <table>
        <thead class="aside">
          <tr>
            <th scope="col">sag</th>
            <th scope="col">mean</th>
            <th scope="col">read</th>
          </tr>
        </thead>
        <tbody>
          {of.sags.map(({ mark, label, middle, first, second, usual }) => (
            <tr key={mark}>
              <th scope="row">
                <svg width="16" height="16" aria-hidden="true">
                  <Mark kind={mark} x={8} y={8} />
                </svg>{' '}
                {label}
              </th>
              <td>
                <Figure of={middle} />
              </td>
              <td class="quiet">
                <div>
                  read {first.text} and {second.text}
                </div>
                <div>
                  usual {Math.round(usual.low)} to {Math.round(usual.high)}
                </div>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}

/** Answers as they were typed, each with the way back to its question. */
function Answers({ paths }: { paths?: readonly string[] | undefined }) {
  const shown = asked.value.filter(({ path }) => path && (paths ? paths.includes(path) : true))
  return (
    <ul class="mybike-answers">
      {shown.map(({ name, label, path, choices }) => (
        <li key={name}>
          <button type="button" onClick={() => open(name)}>
            <span>{label}</span>
            <b>{isSaid(path) ? (choices.find(({ key }) => key === said.value[path])?.label ?? asAnswered(said.value[path]!, path)) : 'not said'}</b>
          </button>
        </li>
      ))}
    </ul>
  )
}

const asAnswered = (text: string, path: string): string => (/\d$/.test(text.trim()) && path in schema.fields ? `${text} ${schema.fields[path as keyof typeof schema.fields].unit}` : text)
