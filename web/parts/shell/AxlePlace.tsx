import type { ComponentChildren, VNode } from 'preact'
import type { End } from '../../core/report.ts'
import { PLAN, READ_NOW, rowsOf } from '../../store/plan.ts'
import { side } from '../../store/place.ts'
import { looking } from '../../store/states.ts'
import { Answer } from '../answer/Answer.tsx'
import { Beside } from '../answer/Beside.tsx'
import { Candidates } from '../answer/Candidates.tsx'
import { Next } from '../answer/Next.tsx'
import { Why } from '../answer/Why.tsx'
import { exists } from '../field/Field.tsx'
import { Rows } from '../field/Rows.tsx'
import { FieldFold } from '../fold/FieldFold.tsx'
import { Fold } from '../fold/Fold.tsx'
import { Built, BuiltRows } from '../pair/Built.tsx'
import { BuildThis } from '../pair/BuildThis.tsx'
import { Pair } from '../pair/Pair.tsx'
import { Frame } from './Frame.tsx'
import { NAMES } from './Header.tsx'
import { wide } from './wide.ts'

interface Props {
  end: End
  /** One picture of this end. */
  picture: VNode
  /** What stands in a fold of the plan over its fields. */
  leadsFold?: Record<string, ComponentChildren>
  /** What stands in it under them. */
  inFold: Record<string, ComponentChildren>
  after?: ComponentChildren
  /** What stands beside the figures that are read back of what is built. */
  besideBuilt?: ComponentChildren
}

/** A place of one end: the answer or what is built, the picture, why and what next, the readings, the rest folded. */
export function AxlePlace({ end, picture, leadsFold, inFold, after, besideBuilt }: Props) {
  const rows = rowsOf(end, exists)
  const seen = end === 'front' && looking()
  const built = side.value === 'built' && !seen
  const shown = [...rows.flat(), ...(built ? READ_NOW : [])]
  return (
    <Frame room={end} name={NAMES[end]}>
      <div class="lead">
        <Pair ends={[end]} />
        {!seen && (built ? <Built end={end} /> : <Answer end={end} />)}
      </div>
      <div class="picture">
        {built && (
          <div id="fields" tabIndex={-1}>
            <BuiltRows end={end} />
            {besideBuilt}
          </div>
        )}
        {picture}
      </div>
      <div class="why">
        <BuildThis end={end} />
        <Beside end={end} />
        {!built && !seen && <Why end={end} />}
        <Fold place={end} name="others" title="Springs on offer" says={end === 'front' ? 'preload, gap, frequency' : 'preload, free sag, frequency'} forced={wide.value}>
          <Candidates end={end} />
        </Fold>
        <Next ends={[end]} />
        {after}
      </div>
      <div class="based">
        {built ? (
          <Fold place={end} name="based" title="Based on" says="as found, and what is wanted">
            <Rows rows={rows} />
          </Fold>
        ) : (
          <>
            <div class="based-head">
              <h2>Based on</h2>
              <OriginKey />
            </div>
            <div id="fields" tabIndex={-1}>
              <Rows rows={rows} />
            </div>
          </>
        )}
        {PLAN[end].folds.map((plan) => (
          <FieldFold key={plan.name} place={end} plan={plan} shown={shown} lead={leadsFold?.[plan.name]}>
            {inFold[plan.name]}
          </FieldFold>
        ))}
      </div>
    </Frame>
  )
}

/** What the lines under the figures mean. */
function OriginKey() {
  return (
    <p class="key">
      <span class="measured">measured</span> <span class="stated">stated</span> <span class="assumed">assumed</span>
    </p>
  )
}
