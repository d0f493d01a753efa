import { report } from '../../store/index.ts'
import { builtOf, sized } from '../../store/looked.ts'
import { READ_NOW } from '../../store/plan.ts'
import { exists } from '../field/Field.tsx'
import { Row } from '../field/Rows.tsx'
import './bench.css'

/** The gap while filling: what is read of both legs, what to pour in or take out, what a step of it does. */
export function Filling() {
  if (!READ_NOW.some(exists)) return null
  return (
    <div class="filling">
      <h3>Gap while filling</h3>
      <div class="rows">
        <Row row={READ_NOW} />
      </div>
      <FillingWords />
    </div>
  )
}

/** What the gaps read now ask for; nothing to pour is told where none is read. */
export function FillingWords() {
  const front = sized(report.value?.ends.front ?? null)
  const filling = report.value?.filling
  const step = front && (builtOf('front') ?? front).gap_step
  return (
    <>
      <div class="told" aria-live="polite" data-filling={filling?.of ?? 'none'}>
        {filling?.problem && <p class="attend">{filling.problem}</p>}
        {filling?.words.map((words) => (
          <p key={words}>{words}</p>
        ))}
      </div>
      {step && <p class="quiet">{step.words}</p>}
      {filling?.note && <p class="quiet">{filling.note}</p>}
    </>
  )
}
