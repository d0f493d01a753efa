import type { Core } from '../../core/client.ts'
import { StartNotice } from '../../core/StartNotice.tsx'
import type { Offline } from '../../offline/offline.ts'
import { exportAll, exportOne, save } from '../../store/files.ts'
import { openFailed, openId, refusal } from '../../store/index.ts'
import { keepFailed } from '../../store/keep.ts'
import { missed } from '../../store/list.ts'
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

/** What went wrong with the job itself, and the way out of that. */
export function Wrong() {
  return (
    <>
      <p class="attend" role="alert">
        {refusal.value || openFailed.value}
      </p>
      {missed.value > 0 && (
        <p class="attend" role="alert" data-keep="missed">
          {missed.value} {missed.value === 1 ? 'job' : 'jobs'} kept on this device before {missed.value === 1 ? 'is' : 'are'} gone: the browser has cleared them. Open the
          file that you saved.
        </p>
      )}
      {keepFailed.value && (
        <div class="attend" role="alert" data-keep="failed">
          <p>What you enter is not kept on this device: {keepFailed.value}. Save it as a file; it is tried again by itself.</p>
          <button type="button" onClick={() => void exportOne(openId.value).then(save)}>
            Save this job's file
          </button>
          <button type="button" onClick={() => void exportAll().then((files) => save(...files))}>
            Save all jobs
          </button>
        </div>
      )}
    </>
  )
}
