import type { Offline, OfflineState } from './offline.ts'

const part = ({ done, total }: { done: number; total: number }) => (total ? `: ${done} of ${total} files` : '')

function words(state: OfflineState): string {
  switch (state.at) {
    case 'not-possible':
      return `Not for offline use: ${state.why}.`
    case 'preparing':
      return `${state.doing === 'checking' ? 'Checking the offline copy' : 'Not ready for offline use yet'}${part(state)}.`
    case 'ready':
      return 'Ready offline.'
    case 'failed':
      return `Not ready for offline use: ${state.reason}.`
  }
}

/** Whether the page works without a signal, and the offer of a new version. */
export function OfflineNotice({ offline }: { offline: Offline }) {
  const state = offline.state.value
  return (
    <div class="offline-notice">
      <p role="status" data-offline={state.at}>
        {words(state)}
      </p>
      {state.at === 'failed' && (
        <button type="button" onClick={() => offline.retry()}>
          Fetch again
        </button>
      )}
      {offline.update.available.value && (
        <p role="status" data-update>
          A new version is here.{' '}
          <button type="button" onClick={() => offline.update.accept()}>
            Reload into it
          </button>
        </p>
      )}
    </div>
  )
}
