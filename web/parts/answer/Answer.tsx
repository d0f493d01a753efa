import type { End, EndReport, Problem } from '../../core/report.ts'
import { type EndView, reports } from '../../store/index.ts'
import { schema } from '../../store/schema.ts'
import { said } from '../field/words.ts'
import { Figure } from '../figure/Figure.tsx'
import { type AnswerPart, answerLines, type Line } from './lines.ts'
import { HowSure } from './HowSure.tsx'
import './answer.css'

/**
 * A part's answer as a sentence set as a column, with what is to be said of it now. The oil's is part of the springs' too,
 * so only one of the two speaks up.
 */
export function Answer({ end, part }: { end: End; part: AnswerPart }) {
  const view = reports[end].value
  return (
    <div class={`answer ${view.stale === 'last good' ? 'last-good' : ''}`} data-answer={end} data-stale={view.stale} aria-live={part === 'oil' ? 'off' : 'polite'} aria-atomic="true">
      <Sentence report={view.report} part={part} />
      {view.report?.state === 'ok' && part !== 'oil' && <HowSure sure={view.report.sure} chosen={view.report.chosen} />}
      <Standing view={view} />
    </div>
  )
}

function Sentence({ report, part }: { report: EndReport | null; part: AnswerPart }) {
  if (report?.state !== 'ok') return <p class="answer-none">{report?.state === 'none' ? 'No spring on offer fits.' : 'No answer yet.'}</p>
  return (
    <p class="answer-lines">
      {answerLines(report, part).map((line) => (
        <AnswerLine key={line.words + line.figures[0]?.unit} {...line} />
      ))}
    </p>
  )
}

function AnswerLine({ words, figures, plain }: Line) {
  return (
    <span class="answer-line">
      <span class="answer-words">{words} </span>
      <span class="answer-figures">
        {plain}
        {figures.map((figure) => (
          <Figure key={figure.unit} {...figure} />
        ))}
      </span>
    </span>
  )
}

/** How the answer stands: its line is always there, so that a mark that comes or goes moves nothing. */
function Standing({ view }: { view: EndView }) {
  if (view.stale === 'saved') return <p class="answer-standing">Saved answer, being worked out again</p>
  if (view.problems.length === 0) return <p class="answer-standing" />
  return (
    <div class="answer-standing answer-problems">
      {view.stale === 'last good' && <strong>Last good result. It waits for this:</strong>}
      {view.problems.map((problem) => (
        <ProblemLine key={problem.path + problem.code} {...problem} />
      ))}
    </div>
  )
}

function ProblemLine(problem: Problem) {
  const { path, limit, way_out } = problem
  const label = path ? schema.fields[path].label : ''
  return (
    <p>
      {label && (
        <a href={`#${path}`}>
          {label} ›
        </a>
      )}{' '}
      {[said(problem), limit, way_out].filter(Boolean).join(' ')}
    </p>
  )
}
