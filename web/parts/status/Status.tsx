import type { Core } from '../../core/client.ts'
import { StartNotice } from '../../core/StartNotice.tsx'
import type { Offline } from '../../offline/offline.ts'
import { OfflineNotice } from '../../offline/OfflineNotice.tsx'
import { Wrong } from './News.tsx'

/** How the page itself stands, at the door: starting, ready offline, a new version; and what went wrong with it. */
export function Status({ core, offline }: { core: Core; offline: Offline }) {
  return (
    <div class="status">
      <StartNotice core={core} />
      {core.state.value.at !== 'loading' && <OfflineNotice offline={offline} />}
      <Wrong />
    </div>
  )
}
