import type { Core } from '../../core/client.ts'
import { StartNotice } from '../../core/StartNotice.tsx'
import type { Offline } from '../../offline/offline.ts'
import { keepFailed, refusal } from '../../store/index.ts'
import './status.css'

/** What a place must say of the page itself: a start that failed, a job that is refused or not kept, a new version. Else nothing. */
export function News({ core, offline }: { core: Core; offline: Offline }) {
  return (
    <div class="news">
      {core.state.value.at === 'failed' && <StartNotice core={core} />}
      {offline.update.available.value && (
        <p role="status" data-update>
          A new version is here.{' '}
          <button type="button" onClick={() => offline.update.accept()}>
            Update now
          </button>
        </p>
      )}
      <Wrong />
    </div>
  )
}

export function Wrong() {
  return (
    <>
      <p class="attend" role="alert">
        {refusal.value}
      </p>
      {keepFailed.value && (
        <p class="attend" role="status">
          This job is not kept on this device ({keepFailed.value}). Save its file.
        </p>
      )}
    </>
  )
}
