/**
 * What passes between the page and the worker that runs the core. Requests and replies are the core's own
 * (calc.boundary.answer: JSON text in, JSON text out); the envelopes around them are ours.
 */
import type { PartReport, Reply } from '../generated/report.ts'

type End = PartReport['axle']

/** A job as an object that was read from JSON: what it holds is for the core to judge. */
export type CoreRequest =
  | { kind: 'size'; job: object; bands: boolean; ends: readonly End[] }
  | { kind: 'figures'; job: object; end: End }
  | { kind: 'states'; job: object }
  | { kind: 'start'; use: string; rider: string }
  | { kind: 'open'; text: string }
  | { kind: 'compare'; before: object; after: object }
  | { kind: 'next visit'; job: object; date: string }
  | { kind: 'my bike'; said: Record<string, string> }

export type CoreReply = Reply

/** Why a start can fail; failures.ts has the words for each. */
export type Reason =
  | 'no-webassembly'
  | 'old-browser'
  | 'missing-file'
  | 'damaged-file'
  | 'no-connection'
  | 'blocked-worker'
  | 'stalled'
  | 'broken-core'
  | 'stuck'

export type Step = 'fetching' | 'starting' | 'loading'

/** A failure as the worker knows it: no words for people yet. */
export interface Cause {
  reason: Reason
  file?: string | undefined
  detail: string
}

export type ToWorker = { id: number; text: string }

export type FromWorker =
  | { type: 'progress'; step: Step; done: number; total: number }
  | { type: 'ready' }
  | ({ type: 'failed' } & Cause)
  | { type: 'answer'; id: number; text: string }
  | { type: 'broken'; id: number; detail: string }

/** Given to the worker in its name: a script from the offline cache loses its query string. */
export interface WorkerOptions {
  /** Where the runtime's files are. */
  runtime: string
  /** Check every file's hash while it loads; the offline cache has done so already. */
  verify: boolean
}
