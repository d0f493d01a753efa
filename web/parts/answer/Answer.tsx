import type { End, EndReport } from '../../core/report.ts'
import { reports } from '../../store/index.ts'
import { Figure } from '../figure/Figure.tsx'
import { answerLines, type Line } from './lines.ts'
import { HowSure } from './HowSure.tsx'
import { Standing } from './Standing.tsx'
import './answer.css'

/** An end's answer as a sentence set as a column, with what is to be said of it now. */
export function Answer({ end }: { end: End }) {
  const view = reports[end].value
  return (
    <div class={`answer ${view.stale === 'last good' ? 'last-good' : ''}`} data-answer={end} data-stale={view.stale} aria-live="polite" aria-atomic="true">
      <Sentence report={view.report} />
      {view.report?.state === 'ok' && view.report.also && <p data-also>{view.report.also}</p>}
      {view.report?.state === 'ok' && <HowSure sure={view.report.sure} chosen={view.report.chosen} />}
      <Standing view={view} />
    </div>
  )
}

function Sentence({ report }: { report: EndReport | null }) {
  if (report?.state !== 'ok') return <p class="answer-none">{report?.state === 'none' ? 'No spring on offer fits.' : 'No answer yet.'}</p>
  // Where no spring can be told, or the nearest misses, the sentence says why; figures alone would claim more.
  if (report.verdict === 'open' || report.verdict === 'nearest') return <p class="answer-none">{figuresBold(report.answer)}</p>
  return <Lines lines={answerLines(report)} />
}

/** The core's sentence with its figures set heavier. */
function figuresBold(words: string) {
  return words.split(/(\d+(?:\.\d+)?)/).map((part, index) => (index % 2 ? <b key={index}>{part}</b> : part))
}

export function Lines({ lines }: { lines: Line[] }) {
  return (
    <p class="answer-lines">
      {lines.map(({ words, figures, plain }) => (
        <span key={words + figures[0]?.unit} class="answer-line">
          <span class="answer-words">{words} </span>
          <span class="answer-figures">
            {plain}
            {figures.map((figure) => (
              <Figure key={figure.unit} {...figure} />
            ))}
          </span>
        </span>
      ))}
    </p>
  )
}
