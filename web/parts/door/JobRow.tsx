import { useSignal } from '@preact/signals'
import { exportOne, save } from '../../store/files.ts'
import { copyAsNextVisit, type Head, jobs, remove, rename } from '../../store/jobs.ts'
import { schema } from '../../store/schema.ts'
import { Compare } from './Compare.tsx'

const STATES = { open: 'open', stuck: 'needs a look', 'worked out': 'draft', built: 'built' } as const

interface Row {
  head: Head
  current: boolean
  open: () => void
  act: (doing: Promise<string | undefined>) => void
}

/** One job: a tap opens it; what else can be done with it folds out. */
export function JobRow({ head, current, open, act }: Row) {
  const doing = useSignal<'' | 'rename' | 'compare'>('')
  const use = schema.uses.find(({ key }) => key === head.use)?.label
  const others = jobs.value.filter(({ id }) => id !== head.id)
  return (
    <li data-job={head.id}>
      <button type="button" class="job-open" aria-current={current || undefined} onClick={open}>
        <strong>{head.name || 'No name yet'}</strong>
        <span>{[head.owner, head.date, use].filter(Boolean).join(', ')}</span>
        <span class="quiet">
          Front {STATES[head.front]}, rear {STATES[head.rear]}. {head.next}
        </span>
      </button>
      <details>
        <summary aria-label={`More for ${head.name || 'this job'}`}>More</summary>
        <div class="button-row">
          <button type="button" onClick={() => act(copyAsNextVisit(head.id))}>
            Copy as next visit
          </button>
          {others.length > 0 && (
            <button type="button" aria-expanded={doing.value === 'compare'} onClick={() => (doing.value = doing.value === 'compare' ? '' : 'compare')}>
              Compare with another
            </button>
          )}
          <button type="button" aria-expanded={doing.value === 'rename'} onClick={() => (doing.value = doing.value === 'rename' ? '' : 'rename')}>
            Rename
          </button>
          <button type="button" onClick={() => void exportOne(head.id).then(save)}>
            Save as a file
          </button>
          <button type="button" onClick={() => void remove(head.id)}>
            Delete
          </button>
        </div>
        {doing.value === 'rename' && <Rename head={head} done={() => (doing.value = '')} />}
        {doing.value === 'compare' && <Compare head={head} others={others} />}
      </details>
    </li>
  )
}

function Rename({ head, done }: { head: Head; done: () => void }) {
  const name = useSignal(head.name)
  const owner = useSignal(head.owner)
  const submit = async (event: SubmitEvent) => {
    event.preventDefault()
    await rename(head.id, { name: name.value, owner: owner.value })
    done()
  }
  return (
    <form onSubmit={(event) => void submit(event)}>
      <label class="ask">
        <span>Bike</span>
        <input class="wide" type="text" autocomplete="off" maxLength={200} value={name.value} onInput={(event) => (name.value = event.currentTarget.value)} />
      </label>
      <label class="ask">
        <span>Owner of it</span>
        <input class="wide" type="text" autocomplete="off" maxLength={200} value={owner.value} onInput={(event) => (owner.value = event.currentTarget.value)} />
      </label>
      <button type="submit">Keep</button>
    </form>
  )
}
