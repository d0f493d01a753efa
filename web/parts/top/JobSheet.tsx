import { useSignal } from '@preact/signals'
import demos from '../../generated/demos.json'
import { head, openFile, showDemo, showOwn } from '../../store/actions.ts'
import { job, ownJob, slot } from '../../store/index.ts'
import { schema } from '../../store/schema.ts'
import { type Theme, theme, THEMES } from '../../store/theme.ts'
import { saveFile } from './file.ts'

/** What can be done with the job as a whole: name it, date it, file it, print it, leave it for another. */
export function JobSheet({ start, done }: { start: () => void; done: () => void }) {
  const wrong = useSignal('')
  const read = async (chooser: HTMLInputElement) => {
    const file = chooser.files?.[0]
    if (!file) return
    // The same file, put right, may be chosen again.
    chooser.value = ''
    wrong.value = (await openFile(await file.text())) ?? ''
    if (!wrong.value) done()
  }
  const then = (act: () => Promise<void>) => () => void act().then(done)
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
        <span>Date</span>
        <input class="wide" type="date" value={job.value.date} onInput={(event) => head({ date: event.currentTarget.value })} />
      </label>
      <div class="grid">
        <button type="button" onClick={() => print()}>
          Print the card
        </button>
        <button type="button" onClick={() => saveFile(job.value)}>
          Save the job file
        </button>
        <label class="button">
          Open a job file
          <input type="file" class="aside" accept=".json,application/json" onChange={(event) => void read(event.currentTarget)} />
        </label>
        <button type="button" onClick={start}>
          Start your own
        </button>
        {demos.map(({ key, name, use }) => (
          <button type="button" key={key} onClick={then(() => showDemo(key))}>
            Demo: {name}, {schema.uses.find((known) => known.key === use)?.label.toLowerCase()}
          </button>
        ))}
        {slot.value === 'demo' && ownJob.value && (
          <button type="button" onClick={then(showOwn)}>
            Back to your job
          </button>
        )}
      </div>
      <p class="attend" role="alert">
        {wrong.value}
      </p>
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
