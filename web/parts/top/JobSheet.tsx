import { job, openId } from '../../store/index.ts'
import { head } from '../../store/actions.ts'
import { type Theme, theme, THEMES } from '../../store/theme.ts'
import { JobList } from '../door/JobList.tsx'
import { ShareJob } from '../door/ShareJob.tsx'

/** What can be done with the job as a whole: name it, date it, file it, print it, leave it for another. */
export function JobSheet({ start, done }: { start: () => void; done: () => void }) {
  return (
    <section class="sheet" aria-labelledby="job-name">
      <h2 id="job-name" tabIndex={-1}>
        Job
      </h2>
      <label class="ask">
        <span>Name</span>
        <input class="wide" type="text" autocomplete="off" maxLength={200} value={job.value.name} onInput={(event) => head({ name: event.currentTarget.value })} />
      </label>
      <label class="ask">
        <span>Owner</span>
        <input class="wide" type="text" autocomplete="off" maxLength={200} value={job.value.owner ?? ''} onInput={(event) => head({ owner: event.currentTarget.value })} />
      </label>
      <label class="ask">
        <span>Date</span>
        <input class="wide" type="date" value={job.value.date} onInput={(event) => head({ date: event.currentTarget.value })} />
      </label>
      <div class="grid">
        <button type="button" onClick={() => print()}>
          Print the card
        </button>
        <button type="button" onClick={start}>
          Start your own
        </button>
      </div>
      <ShareJob id={openId.value} key={openId.value} />
      <JobList done={done} />
      <Look />
      <p class="quiet">Everything stays on this device.</p>
    </section>
  )
}

function Look() {
  return (
    <fieldset class="look">
      <legend>Screen</legend>
      {(Object.entries(THEMES) as [Theme, string][]).map(([key, label]) => (
        <label key={key}>
          <input type="radio" name="look" checked={theme.value === key} onChange={() => (theme.value = key)} />
          {label}
        </label>
      ))}
    </fieldset>
  )
}
