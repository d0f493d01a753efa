import { render } from 'preact'
import { startCore } from './core/client.ts'
import { markOnce } from './core/marks.ts'
import { StartNotice } from './core/StartNotice.tsx'
import { startOffline } from './offline/offline.ts'
import { OfflineNotice } from './offline/OfflineNotice.tsx'

const core = startCore()
const offline = startOffline(core.state)

function Page() {
  return (
    <main>
      <h1>Stanchion</h1>
      <StartNotice core={core} />
      <OfflineNotice offline={offline} />
    </main>
  )
}

const place = document.getElementById('page')!
place.replaceChildren()
render(<Page />, place)
requestAnimationFrame(() => markOnce('first-screen'))
