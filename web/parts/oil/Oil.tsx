import { Answer } from '../answer/Answer.tsx'
import { Caution } from '../caution/Caution.tsx'
import { Fields } from '../field/Fields.tsx'

export function Oil() {
  return (
    <section class="part" id="oil" aria-labelledby="oil-name">
      <div class="lead">
        <h2 id="oil-name">Front, oil and air</h2>
        <Answer end="front" part="oil" />
      </div>
      <div class="rest">
        <Fields part="oil and air" />
        <Caution keys={['gas']} />
      </div>
    </section>
  )
}
