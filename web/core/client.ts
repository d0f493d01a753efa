/** The page's side of the core: its state, and questions to it. */
import { effect, type ReadonlySignal, signal } from '@preact/signals'
import type { Cause, CoreReply, CoreRequest, FromWorker, Step } from './boundary.ts'
import { early, run, type Running } from './early.ts'
import { type Failure, inWords } from './failures.ts'
import { markOnce } from './marks.ts'

export type BootState =
  | { at: 'loading'; step: Step; done: number; total: number }
  | { at: 'ready' }
  | ({ at: 'failed' } & Failure)

export interface Core {
  readonly state: ReadonlySignal<BootState>
  /** The start is over: the core has answered, or will not. */
  readonly settled: ReadonlySignal<boolean>
  /** How many answers were lost with their worker: what was asked must be asked again. */
  readonly lost: ReadonlySignal<number>
  /** Ask the core. Rejects with a CoreError when there can be no answer; a refused job is a reply like any other. */
  ask(request: CoreRequest, limit?: number): Promise<CoreReply>
  /** Start anew, when the user asks for it. */
  restart(): void
}

class CoreError extends Error {
  constructor(readonly why: 'failed' | 'too-slow' | 'broke', message: string) {
    super(message)
  }
}

interface Question {
  id: number
  request: CoreRequest
  limit: number
  resolve: (reply: CoreReply) => void
  reject: (error: CoreError) => void
}

const kindOf = (request: CoreRequest) => `${request.kind} ${request.kind === 'size' && request.bands}`

/** Silence is counted in looks, not by the clock: a page that was frozen wakes to one look, not to a failure. */
const LOOK = 5_000
const LOOKS = 5
const LIMIT = 10_000

class CoreClient implements Core {
  readonly state = signal<BootState>({ at: 'loading', step: 'fetching', done: 0, total: 1 })
  readonly settled = signal(false)
  readonly lost = signal(0)
  private worker: Worker | undefined
  private waiting: Question[] = []
  private current: Question | undefined
  private timer: ReturnType<typeof setTimeout> | undefined
  private watch: ReturnType<typeof setInterval> | undefined
  private silent = 0
  private losses = 0
  private lostOn = ''
  private ids = 0

  constructor(first: Running | Cause, private readonly start: () => Running | Cause) {
    this.adopt(first)
  }

  ask(request: CoreRequest, limit = LIMIT): Promise<CoreReply> {
    const { value: state } = this.state
    if (state.at === 'failed') return Promise.reject(new CoreError('failed', state.why))
    return new Promise((resolve, reject) => {
      this.waiting.push({ id: ++this.ids, request, limit, resolve, reject })
      this.next()
    })
  }

  restart(): void {
    this.losses = 0
    this.again()
  }

  private again(): void {
    this.worker?.terminate()
    this.state.value = { at: 'loading', step: 'fetching', done: 0, total: 1 }
    this.adopt(this.start())
  }

  private adopt(running: Running | Cause): void {
    clearInterval(this.watch)
    if ('reason' in running) return this.fail(running)
    const { worker, heard } = running
    this.worker = worker
    this.silent = 0
    this.watch = setInterval(() => this.look(), LOOK)
    worker.onmessage = (event: MessageEvent<FromWorker>) => this.hear(event.data)
    worker.onerror = (event) => this.error(event)
    for (const event of heard) event instanceof MessageEvent ? this.hear(event.data) : this.error(event)
  }

  private error(event: ErrorEvent | Event): void {
    // Without a message it is the script itself that did not arrive or was refused.
    const detail = event instanceof ErrorEvent && event.message ? event.message : 'the worker script did not load'
    this.fail({ reason: event instanceof ErrorEvent && event.message ? 'broken-core' : 'blocked-worker', detail })
  }

  private look(): void {
    if (this.state.value.at !== 'loading') return clearInterval(this.watch)
    this.silent += 1
    const { step, done, total } = this.state.value
    if (this.silent >= LOOKS)
      this.fail({ reason: 'stalled', detail: `silent for ${(LOOK * LOOKS) / 1000} s while ${step}, ${done} of ${total}` })
  }

  private hear(message: FromWorker): void {
    this.silent = 0
    switch (message.type) {
      case 'progress':
        if (this.state.value.at === 'loading') this.state.value = { at: 'loading', ...message }
        break
      case 'ready':
        // Also after a stall: late is better than never.
        this.state.value = { at: 'ready' }
        this.next()
        break
      case 'failed':
        this.fail(message)
        break
      case 'answer':
        this.answered(message.id, JSON.parse(message.text))
        break
      case 'broken':
        this.lose(new CoreError('broke', message.detail))
    }
  }

  /** One question at a time, so that a time limit counts the core's own work and not a queue. */
  private next(): void {
    if (this.state.value.at !== 'ready' || this.current) return
    const question = this.waiting.shift()
    if (!question) return
    this.current = question
    this.worker!.postMessage({ id: question.id, text: JSON.stringify(question.request) })
    this.timer = setTimeout(() => this.tooSlow(question), question.limit)
  }

  private answered(id: number, reply: CoreReply): void {
    const question = this.current
    if (question?.id !== id) return
    this.free()
    // Answers of another kind say nothing of the one that costs workers.
    if (kindOf(question.request) === this.lostOn) this.losses = 0
    this.settled.value = true
    if (reply.kind === 'report' || reply.kind === 'part' || reply.kind === 'figures') markOnce('first-computed')
    question.resolve(reply)
    this.next()
  }

  private tooSlow(question: Question): void {
    this.lose(new CoreError('too-slow', `no answer within ${question.limit / 1000} s`))
  }

  /** The worker cannot be interrupted, only replaced; two losses in a row end that, so it cannot go round forever. */
  private lose(error: CoreError): void {
    const question = this.current
    this.free()
    if (question) this.lostOn = kindOf(question.request)
    this.losses += 1
    this.lost.value += 1
    question?.reject(error)
    if (this.losses >= 2) return this.fail({ reason: 'stuck', detail: error.message })
    this.again()
  }

  private fail(cause: Cause): void {
    clearInterval(this.watch)
    this.state.value = { at: 'failed', ...inWords(cause) }
    this.settled.value = true
    const lost = [...(this.current ? [this.current] : []), ...this.waiting]
    this.free()
    this.waiting = []
    for (const question of lost) question.reject(new CoreError('failed', this.state.value.why))
  }

  private free(): void {
    clearTimeout(this.timer)
    this.current = undefined
  }
}

/** The core that the early script has started. */
export function startCore(first: Running | Cause = early, start: () => Running | Cause = run): Core {
  const core = new CoreClient(first, start)
  // For styles, and for whoever looks from outside.
  effect(() => {
    document.documentElement.dataset.core = core.state.value.at
  })
  return core
}
