/** The open job's way to the core and back: asked at every edit, asked again whenever what stands may not be true any more. */
import { effect, untracked } from '@preact/signals'
import type { CoreReply, CoreRequest } from '../core/boundary.ts'
import type { Core } from '../core/client.ts'
import { latestOnly } from '../core/latest.ts'
import type { End } from '../core/report.ts'
import type { JobDocument } from './document.ts'
import { answerShown, heard, heardFigures, heardPart, job, markStale, refusal } from './index.ts'
import { keepAnswer } from './keep.ts'

export const BOTH: readonly End[] = ['front', 'rear']

let core: Core | undefined
let ask: (request: CoreRequest) => Promise<CoreReply | undefined>

// Bands are many answers in one, and cannot be interrupted: they wait until the hand rests, and may take their time.
const REST = 800
const BANDS_LIMIT = 60_000
// What is not answered by then is marked: a worker may be dead and nobody told.
const LATE = 600

/** From now on every change goes to this core. A core that is ready again has forgotten what it was asked. */
export function connect(to: Core): void {
  core = to
  ask = latestOnly((request) => to.ask(request, request.kind === 'size' && request.bands ? BANDS_LIMIT : undefined))
  let lost = false
  effect(() => {
    const { at } = to.state.value
    if (at === 'ready' && lost) untracked(() => void workOut())
    lost = at === 'failed' || (lost && at === 'loading')
  })
  effect(() => {
    if (to.lost.value === 0) return
    lost = true
    untracked(markStale)
  })
}

/** Ask the core something beside the open job. What it has no answer to is a failure in words. */
export async function askCore(request: CoreRequest): Promise<CoreReply> {
  if (!core) return { kind: 'failure', message: 'The part that computes is not there.' }
  return core.ask(request).catch((error: Error) => ({ kind: 'failure', message: error.message }))
}

/** What stands may be old (the page was frozen, another tab wrote): mark it and ask again. */
export function askAgain(): void {
  markStale()
  void workOut()
}

/** Work the job out and keep what came of it: the figures of the end just edited at once, then both ends, and their bands once
 * the hand rests. No answer can be interrupted, so none is longer than it need be; what the next needs of it, the core keeps. */
export async function workOut(first: End = 'front'): Promise<void> {
  const asked = job.value
  const rested = new Promise((resolve) => setTimeout(resolve, REST))
  const late = setTimeout(() => job.value === asked && markStale(), LATE)
  await figures(asked, first)
  const answered = await size(asked, BOTH, false)
  clearTimeout(late)
  if (!answered) return
  await rested
  if (job.value === asked && (await size(asked, [first], true))) await size(asked, BOTH, true)
}

async function figures(asked: JobDocument, end: End): Promise<void> {
  const reply = await ask({ kind: 'figures', job: asked, end }).catch(() => undefined)
  if (reply?.kind === 'figures' && job.value === asked) heardFigures(end, reply.figures)
}

/** What stands is not the answer. */
function nothing(): false {
  markStale()
  return false
}

/** False when nothing came of it: overtaken, refused, or the core's own state says why on the page. */
export async function size(asked: JobDocument, ends: readonly End[], bands: boolean): Promise<boolean> {
  if (job.value !== asked) return false
  const reply = await ask({ kind: 'size', job: asked, bands, ends }).catch(() => undefined)
  if (job.value !== asked) return false
  if (!reply) return nothing()
  if (reply.kind === 'failure') refusal.value = reply.message
  if (reply.kind === 'report') heard(reply.report, bands)
  else if (reply.kind === 'part') heardPart(reply.report, bands)
  else return nothing()
  if (ends === BOTH) keepAnswer(answerShown(), asked)
  return true
}
