import { useSignal } from '@preact/signals'
import type { Core } from '../../core/client.ts'
import demos from '../../generated/demos.json'
import type { Offline } from '../../offline/offline.ts'
import { openFile, showDemo, showOwn } from '../../store/actions.ts'
import { job, ownJob, slot } from '../../store/index.ts'
import { go } from '../../store/place.ts'
import { schema } from '../../store/schema.ts'
import { Frame } from '../shell/Frame.tsx'
import { Start } from '../start/Start.tsx'
import { Status } from '../status/Status.tsx'
import { saveFile } from './file.ts'
import { Look } from './Look.tsx'
import './door.css'

const enter = (act: () => Promise<void>) => () => void act().then(() => go('front', { top: true, side: 'answer' }))

/** The front door: jobs on this device, a new one, a file, the worked demos. */
export function Door({ core, offline }: { core: Core; offline: Offline }) {
  const starting = useSignal(false)
  const wrong = useSignal('')
  const read = async (chooser: HTMLInputElement) => {
    const file = chooser.files?.[0]
    if (!file) return
    // The same file, put right, may be chosen again.
    chooser.value = ''
    wrong.value = (await openFile(await file.text())) ?? ''
    if (!wrong.value) go('front', { top: true, side: 'answer' })
  }
  return (
    <Frame room="door" name="Stanchion: springs and oil height for the rider">
      <div class="door-head">
        <b>Stanchion</b>
        <a href="#settings">Settings</a>
      </div>
      <Status core={core} offline={offline} />
      {starting.value ? <Start done={() => (starting.value = false)} /> : <Jobs />}
      <section class="door-part">
        <h2>
          Worked demos <span class="quiet door-note">all invented</span>
        </h2>
        <ul class="door-list">
          {demos.map(({ key, name, use }) => (
            <li key={key}>
              <button type="button" class="bare" onClick={enter(() => showDemo(key))}>
                <b>Demo: {name}</b> <span class="quiet">{schema.uses.find((known) => known.key === use)?.label.toLowerCase()} ›</span>
              </button>
            </li>
          ))}
        </ul>
      </section>
      <section class="door-part">
        <h2 id="settings" tabIndex={-1}>Settings</h2>
        <Look />
        <p class="quiet">Everything stays on this device.</p>
      </section>
      <p class="attend" role="alert">
        {wrong.value}
      </p>
      <div class="door-bar">
        <label class="button">
          Open file
          <input type="file" class="aside" accept=".json,application/json" onChange={(event) => void read(event.currentTarget)} />
        </label>
        <button type="button" class="filled" aria-expanded={starting.value} onClick={() => (starting.value = true)}>
          New job
        </button>
      </div>
    </Frame>
  )
}

/** What this device holds: the job that is open, and the user's own where a demo is. */
function Jobs() {
  const { name, date, invented } = job.value
  return (
    <section class="door-part">
      <h2>Jobs on this device</h2>
      <ul class="door-list">
        <li>
          <a class="door-job" href="#front">
            <b>{name || 'Bike without a name'} ›</b>
            <span class="quiet">{invented ? 'demo, invented' : date}</span>
          </a>
          <button type="button" class="link" onClick={() => saveFile(job.value)}>
            Save the job file
          </button>
        </li>
        {slot.value === 'demo' && ownJob.value && (
          <li>
            <button type="button" class="bare" onClick={enter(showOwn)}>
              <b>Back to your job ›</b>
            </button>
          </li>
        )}
      </ul>
    </section>
  )
}
