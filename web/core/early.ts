/**
 * A script of its own, ahead of the page's bundle: the worker begins to fetch while the bundle is still loading.
 * The bundle imports this module too, and so gets the same worker.
 */
import type { Cause, FromWorker, WorkerOptions } from './boundary.ts'
import { belowFloor } from './floor.ts'
import workerScript from './worker.ts?worker&url'

export interface Running {
  worker: Worker
  /** Events that came before the bundle listened. */
  heard: (MessageEvent<FromWorker> | ErrorEvent)[]
}

/** Start a worker, or say why this browser cannot. */
export function run(): Running | Cause {
  const unfit = belowFloor()
  if (unfit) return unfit
  const options: WorkerOptions = {
    runtime: new URL('runtime/', document.baseURI).href,
    verify: !navigator.serviceWorker?.controller,
  }
  let asked = false
  const worker = new Worker(workerScript, {
    name: JSON.stringify(options),
    // A browser without module workers never reads this, which is how we know.
    get type() {
      asked = true
      return 'module' as const
    },
  })
  if (!asked) {
    worker.terminate()
    return { reason: 'old-browser', detail: 'no module workers' }
  }
  const heard: Running['heard'] = []
  worker.onmessage = (event: MessageEvent<FromWorker>) => heard.push(event)
  worker.onerror = (event) => heard.push(event)
  return { worker, heard }
}

export const early = run()
