import { useSignal } from '@preact/signals'
import { useEffect } from 'preact/hooks'
import demos from '../../generated/demos.json'
import { exportAll, save } from '../../store/files.ts'
import { openId } from '../../store/index.ts'
import { jobs, list, matches, open, persisted, removedJobs, resetDemo, restore, showDemo } from '../../store/jobs.ts'
import { top } from '../../store/keep.ts'
import { schema } from '../../store/schema.ts'
import { CheckMyBike } from './CheckMyBike.tsx'
import { JobRow } from './JobRow.tsx'
import './jobs.css'

// A list that fits a screen needs no search.
const MANY = 6

/** The jobs on this device, the worked demos, and files in and out. */
export function JobList({ done }: { done: () => void }) {
  const search = useSignal('')
  const said = useSignal('')
  useEffect(() => void list(), [])
  const shown = jobs.value.filter((head) => matches(head, search.value))
  const act = async (doing: Promise<string | undefined>) => {
    said.value = (await doing) ?? ''
    if (!said.value) done()
  }
  return (
    <div class="jobs">
      <h2>Jobs on this device</h2>
      {jobs.value.length > MANY && (
        <label class="ask">
          <span>Search</span>
          <input class="wide" type="search" placeholder="bike, owner, date" value={search.value} onInput={(event) => (search.value = event.currentTarget.value)} />
        </label>
      )}
      {jobs.value.length === 0 && <p class="quiet">None yet. What you enter in a job of your own is kept at every key.</p>}
      {search.value && shown.length === 0 && <p role="status">No job has all of these words.</p>}
      <ul class="job-rows">
        {shown.map((head) => (
          <JobRow key={head.id} head={head} current={head.id === openId.value} act={act} open={() => act(open(head.id))} />
        ))}
      </ul>
      <JustDeleted />
      <CheckMyBike />
      <h2>Worked demos, invented</h2>
      <div class="button-row">
        {demos.map(({ key, name, use }) => (
          <button type="button" key={key} onClick={() => act(showDemo(key))}>
            Demo: {name}, {schema.uses.find((known) => known.key === use)?.label.toLowerCase()}
          </button>
        ))}
        {openId.value.startsWith('demo:') && top.value.rev > 0 && (
          <button type="button" onClick={() => act(resetDemo())}>
            The open demo as it was made
          </button>
        )}
      </div>
      {jobs.value.length > 0 && (
        <button type="button" class="link" onClick={() => void exportAll().then((files) => save(...files))}>
          Save all jobs as one file ›
        </button>
      )}
      <p class="attend" role="alert">
        {said.value}
      </p>
      {persisted.value === false && jobs.value.length > 0 && (
        <p class="quiet">The browser may clear what is kept here when the device runs short of room. Save a file now and then.</p>
      )}
    </div>
  )
}

/** What was deleted can be brought back. */
function JustDeleted() {
  const [last, ...others] = removedJobs.value
  if (!last) return null
  return (
    <div class="deleted">
      <p role="status">
        Deleted: {last.name || 'a job with no name'}.{' '}
        <button type="button" onClick={() => void restore(last.id)}>
          Bring it back
        </button>
      </p>
      {others.length > 0 && (
        <details>
          <summary>Deleted before that ({others.length})</summary>
          <ul>
            {others.map(({ id, name, date }) => (
              <li key={id}>
                {name || 'No name'} {date}{' '}
                <button type="button" onClick={() => void restore(id)}>
                  Bring it back
                </button>
              </li>
            ))}
          </ul>
        </details>
      )}
    </div>
  )
}
