/** The worker: starts the core, then answers one text with another. */
import { boot } from './boot.ts'
import type { FromWorker, Step, ToWorker, WorkerOptions } from './boundary.ts'
import { BootError } from './files.ts'

const post = (message: FromWorker) => self.postMessage(message)
const options: WorkerOptions = JSON.parse(self.name)

// Chunks come by the thousand; the page needs a few a second.
const PAUSE = 100
let last = 0
function progress(step: Step, done: number, total: number): void {
  const now = performance.now()
  if (step === 'fetching' && done < total && now - last < PAUSE) return
  last = now
  post({ type: 'progress', step, done, total })
}

function failed(error: unknown): void {
  if (error instanceof BootError) post({ type: 'failed', reason: error.reason, file: error.file, detail: error.detail })
  else post({ type: 'failed', reason: 'broken-core', detail: String(error) })
}

boot(options.runtime, options.verify, progress).then(({ answer, pyodide }) => {
  if (import.meta.env.DEV) void import('./renew.ts').then(({ takeNewCores }) => takeNewCores(pyodide, options.runtime, (next) => (answer = next)))
  self.onmessage = ({ data: { id, text } }: MessageEvent<ToWorker>) => {
    try {
      post({ type: 'answer', id, text: answer(text) })
    } catch (error) {
      // The core answers every input; what arrives here is the runtime's own end (memory, a fatal error).
      post({ type: 'broken', id, detail: String(error) })
    }
  }
  post({ type: 'ready' })
}, failed)
