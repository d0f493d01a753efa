import { useSignal } from '@preact/signals'
import type { Core } from '../../core/client.ts'
import type { Offline } from '../../offline/offline.ts'
import { go } from '../../store/place.ts'
import { About } from '../about/About.tsx'
import { Frame } from '../shell/Frame.tsx'
import { Start } from '../start/Start.tsx'
import { Status } from '../status/Status.tsx'
import { FileChooser } from './FileChooser.tsx'
import { JobList } from './JobList.tsx'
import { Look } from './Look.tsx'
import './door.css'

const toAnswer = () => go('front', { top: true, side: 'answer' })

/** The front door: jobs on this device, a new one, a file, the worked demos. */
export function Door({ core, offline }: { core: Core; offline: Offline }) {
  const starting = useSignal(false)
  const wrong = useSignal('')
  const act = (doing: Promise<string | undefined>) => void doing.then((said) => ((wrong.value = said ?? ''), said === '' && toAnswer()))
  return (
    <Frame room="door" name="Stanchion: springs and oil height for the rider">
      <div class="door-head">
        <b>Stanchion</b>
        <a href="#settings">Settings</a>
      </div>
      <Status core={core} offline={offline} />
      {starting.value ? <Start done={() => (starting.value = false)} /> : <JobList done={toAnswer} />}
      <section class="door-part">
        <h2 id="settings" tabIndex={-1}>
          Settings
        </h2>
        <Look />
        <p class="quiet">Everything stays on this device.</p>
        <About />
      </section>
      <p class="attend" role="alert">
        {wrong.value}
      </p>
      <div class="door-bar">
        <FileChooser act={act} />
        <button type="button" class="filled" aria-expanded={starting.value} onClick={() => (starting.value = true)}>
          New job
        </button>
      </div>
    </Frame>
  )
}
