import type { Core } from '../../core/client.ts'
import { StartNotice } from '../../core/StartNotice.tsx'
import type { Offline } from '../../offline/offline.ts'
import { OfflineNotice } from '../../offline/OfflineNotice.tsx'
import { keepFailed, refusal } from '../../store/index.ts'
import './status.css'

/** One line on how the page itself stands: starting, ready offline, a new version; and what went wrong with it. */
export function Status({ core, offline }: { core: Core; offline: Offline }) {
  return (
    <div class="status">
      <StartNotice core={core} />
      {core.state.value.at !== 'loading' && <OfflineNotice offline={offline} />}
      <p class="attend" role="alert">
        {refusal.value}
      </p>
      {keepFailed.value && (
        <p class="attend" role="status">
          This job is not kept on this device ({keepFailed.value}). Save its file.
        </p>
      )}
    </div>
  )
}
