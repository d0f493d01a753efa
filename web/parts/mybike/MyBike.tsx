import { useEffect, useRef } from 'preact/hooks'
import { at, end, follow, front, go, isFirst, isSaid, onward, question, reply } from '../../store/mybike.ts'
import { Frame } from '../shell/Frame.tsx'
import { Asked } from './Asked.tsx'
import { Send } from './Send.tsx'
import { Verdict } from './Verdict.tsx'
import './mybike.css'

const leadOf = (where: string) => (where === 'verdict' && front.value ? 'Next: the front' : where.endsWith('verdict') ? 'Send to my tuner' : undefined)

/** The customer's path, behind its own door: one question a screen, a verdict, and the way to the tuner. */
export function MyBike() {
  const now = question.value
  const body = useRef<HTMLFormElement>(null)
  const arrived = useRef(at.value)
  useEffect(follow, [])
  const told = reply.value !== null
  // As drawn: by the time that an effect runs the hand may be further on.
  const where = at.value
  useEffect(() => {
    // A verdict that comes a moment later takes the place of the heading that had the focus.
    const lost = where === 'verdict' && told && document.activeElement === document.body
    if (arrived.current === where && !lost) return
    arrived.current = where
    body.current?.querySelector<HTMLElement>('h2')?.focus({ preventScroll: true })
  }, [where, told])
  const lead = now ? now.next : leadOf(where)
  return (
    <Frame room="mybike" name="Check my bike">
      <div class="mybike-head">
        <a href="#door">‹ Leave</a>
        <b>Check my bike</b>
        <span class="quiet">{end.value}</span>
      </div>
      <form
        ref={body}
        class="mybike"
        noValidate
        onSubmit={(event) => {
          event.preventDefault()
          if (now) void onward(now)
          else go(1)
        }}
      >
        {now ? <Asked key={now.name} of={now} /> : where === 'send' ? <Send /> : <Verdict key={where} of={end.value} />}
        <div class="mybike-bar">
          {!isFirst.value && (
            <button type="button" onClick={() => go(-1)}>
              Back
            </button>
          )}
          {lead && (
            <button type="submit" class="filled">
              {now?.optional && !isSaid(now.path) ? 'Skip' : lead}
            </button>
          )}
        </div>
      </form>
    </Frame>
  )
}
