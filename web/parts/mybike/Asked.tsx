import { useEffect, useRef } from 'preact/hooks'
import { isSaid, open, progress, type Question, rides, say, useUnit, said, asked, units, wrong } from '../../store/mybike.ts'
import { schema, unitsOf } from '../../store/schema.ts'
import { apart, together } from '../../store/text.ts'
import { offered } from '../../store/units.ts'
import type { FieldPath } from '../../generated/schema.ts'
import { Drawing } from './Drawing.tsx'
import './asked.css'

/** One question: where it stands, what is asked, how it is done, and the answer. */
export function Asked({ of }: { of: Question }) {
  const you = of.you[rides.value] ?? of.you.any
  return (
    <>
      <Progress of={of} />
      <h2 tabIndex={-1} id="mybike-title">
        {of.title}
      </h2>
      {of.drawing && <Drawing of={of.drawing} />}
      <div class="mybike-steps" id="mybike-steps">
        {of.path === '' ? (
          <ul>
            {of.words.map((words) => (
              <li key={words}>{words}</li>
            ))}
          </ul>
        ) : (
          of.words.map((words) => <p key={words}>{words}</p>)
        )}
        {you && (
          <p>
            <b>You:</b> {you}
          </p>
        )}
        {of.helper && (
          <p>
            <b>Helper:</b> {of.helper}
          </p>
        )}
        {of.caution && (
          <p class="mybike-caution" role="note">
            {of.caution}
          </p>
        )}
      </div>
      {of.choices.length > 0 ? <Choices of={of} /> : of.path !== '' && <Figure of={of} path={of.path} />}
      <Wrong path={of.path} />
    </>
  )
}

/** Which one this is. Those before it are ticks: a figure in sight would pull the next one towards it. */
function Progress({ of }: { of: Question }) {
  const { word, number, all } = progress(of)
  if (number === 0) return null
  return (
    <div class="mybike-progress">
      <b>
        {word} {number} of {all.length}
      </b>
      <span class="mybike-ticks" aria-hidden="true">
        {all.map(({ name, path }) => (
          <span key={name} class={name === of.name ? 'now' : isSaid(path) ? 'done' : ''}>
            {name !== of.name && isSaid(path) ? '✓' : ''}
          </span>
        ))}
      </span>
    </div>
  )
}

function Choices({ of }: { of: Question }) {
  const chosen = said.value[of.path] ?? ''
  return (
    <div class="mybike-choices" role="radiogroup" aria-labelledby="mybike-title" aria-describedby="mybike-wrong">
      {of.choices.map(({ key, label }) => (
        <label key={key} class={chosen === key ? 'chosen' : ''}>
          <input type="radio" name={of.path} value={key} checked={chosen === key} onChange={() => say(of.path, key)} />
          {label}
        </label>
      ))}
    </div>
  )
}

/** One figure, large, in the unit that was chosen last. */
function Figure({ of, path }: { of: Question; path: FieldPath }) {
  const field = schema.fields[path]
  const known = unitsOf(field)
  const typed = apart(said.value[path] ?? '', known)
  const unit = typed.unit || units.value[field.dimension] || field.unit
  // A bare figure stays bare: only then can another unit be offered for one that no bike has.
  const write = (text: string, of = unit) => say(path, of === field.unit || text.trim() === '' ? text.trim() : together(text, of))
  const turn = (to: string) => {
    useUnit(field.dimension, to)
    write(typed.number, to)
  }
  return (
    <div class="mybike-figure">
      <input
        type="text"
        name={path}
        inputMode="decimal"
        autocomplete="off"
        enterkeyhint="next"
        maxLength={40}
        value={typed.number}
        aria-labelledby="mybike-title"
        aria-describedby="mybike-steps mybike-wrong"
        aria-invalid={wrong.value?.path === path}
        required={!of.optional}
        onInput={(event) => write(event.currentTarget.value)}
      />
      <span class="boxes" role="group" aria-label="Unit">
        {offered(field).map((one) => (
          <button key={one} type="button" class={one === unit ? 'on' : ''} aria-pressed={one === unit} onPointerDown={(event) => event.preventDefault()} onClick={() => turn(one)}>
            {one}
          </button>
        ))}
      </span>
    </div>
  )
}

/** What is wrong, other readings of what was typed, and the way to the answer at fault. */
function Wrong({ path }: { path: string }) {
  const problem = wrong.value
  const at = problem && asked.value.find((one) => one.path === problem.path)
  const place = useRef<HTMLDivElement>(null)
  useEffect(() => {
    if (problem) place.current?.scrollIntoView({ block: 'nearest' })
  }, [problem])
  return (
    <div ref={place} class="mybike-wrong" id="mybike-wrong" role="alert">
      {problem && (
        <>
          <p class="attend">{[problem.message, problem.limit, problem.way_out].filter(Boolean).join(' ')}</p>
          <span class="boxes">
            {problem.readings.map((reading) => (
              <button key={reading} type="button" onClick={() => say(problem.path, reading)}>
                It is {reading}
              </button>
            ))}
            {at && at.path !== path && (
              <button type="button" onClick={() => open(at.name)}>
                Go to: {at.label}
              </button>
            )}
          </span>
        </>
      )}
    </div>
  )
}
