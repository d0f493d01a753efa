/**
 * What passes between the page and the worker that runs the core. Requests and replies are the core's own
 * (calc.boundary.answer: JSON text in, JSON text out); the envelopes around them are ours.
 */
export type Job = Record<string, unknown>
export type Report = Record<string, unknown>

export type CoreRequest =
  | { kind: 'size'; job: Job; bands: boolean; ends: readonly ('front' | 'rear')[] }
  | { kind: 'figures'; job: Job; end: 'front' | 'rear' }
  | { kind: 'start'; use: string; rider: string }
  | { kind: 'open'; text: string }
  | { kind: 'compare'; before: Job; after: Job }
  | { kind: 'next visit'; job: Job; date: string }

export type CoreReply =
  | { kind: 'report'; report: Report }
  /** Of one end alone. */
  | { kind: 'part'; report: Report }
  | { kind: 'figures'; figures: Record<string, unknown> | null }
  | { kind: 'job'; job: Job }
  | { kind: 'jobs'; jobs: Job[]; refused: string[] }
  | { kind: 'comparison'; comparison: Record<string, unknown> }
  | { kind: 'failure'; message: string; [more: string]: unknown }

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
