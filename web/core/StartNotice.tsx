import { useSignal } from '@preact/signals'
import { fetchAllAgain } from '../offline/offline.ts'
import type { BootState, Core } from './client.ts'
import type { Reason, Step } from './boundary.ts'

const STEPS: Record<Step, string> = {
  fetching: 'Fetching the part that computes',
  starting: 'Starting it',
  loading: 'Nearly there',
}

// Where the files themselves are at fault, trying again would find the same files.
const FILES_AT_FAULT: Reason[] = ['damaged-file', 'broken-core']

function progress(state: BootState & { at: 'loading' }): string {
  const part = state.step === 'fetching' && state.total > 1 ? `, ${Math.round((100 * state.done) / state.total)} %` : ''
  return `${STEPS[state.step]}${part}.`
}

/** What the start is doing, or how it failed and the way out. Shows nothing once the core is ready. */
export function StartNotice({ core }: { core: Core }) {
  const state = core.state.value
  if (state.at === 'ready') return null
  if (state.at === 'loading')
    return (
      <p class="start-notice" role="status">
        {progress(state)}
      </p>
    )
  return (
    <section class="start-notice failed" role="alert" data-reason={state.reason}>
      <h2>{state.what}</h2>
      <p>{state.why}</p>
      <p>{state.wayOut}</p>
      <button type="button" onClick={() => core.restart()}>
        Try again
      </button>
      {FILES_AT_FAULT.includes(state.reason) && <FetchAgain />}
      <details>
        <summary>Report</summary>
        <pre tabIndex={0}>{state.report}</pre>
        <button type="button" onClick={() => void navigator.clipboard?.writeText(state.report)}>
          Copy the report
        </button>
      </details>
    </section>
  )
}

function FetchAgain() {
  const said = useSignal('')
  const fetchAgain = async () => {
    said.value = 'Fetching. What is here stays until all is here.'
    said.value = (await fetchAllAgain()) ?? ''
  }
  return (
    <>
      <button type="button" onClick={() => void fetchAgain()}>
        Fetch everything again
      </button>
      <p role="status">{said.value}</p>
    </>
  )
}
