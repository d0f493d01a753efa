/**
 * The page's side of working offline. "Ready" is said only when the service worker has read back every file of
 * its list and found the hash it should have; a new version is offered and waits until it is accepted.
 */
import { effect, type ReadonlySignal, signal } from '@preact/signals'
import type { FromServiceWorker, ToServiceWorker } from './messages.ts'

export type OfflineState =
  | { at: 'not-possible'; why: string }
  | { at: 'preparing'; doing: 'fetching' | 'checking'; done: number; total: number }
  | { at: 'ready' }
  | { at: 'failed'; reason: string }

export interface Offline {
  readonly state: ReadonlySignal<OfflineState>
  readonly update: {
    /** A new version is on this device and waits. */
    readonly available: ReadonlySignal<boolean>
    /** Take it: the page reloads. */
    accept(): void
  }
  /** Try again after a failure. */
  retry(): void
}

function whyNot(): string | undefined {
  if (!isSecureContext) return 'this address is plain http; offline use takes https'
  if (!('serviceWorker' in navigator)) return 'this browser does not keep pages (a private window often does not)'
  return undefined
}

/** A page that came from the offline copy has one to check; any other has one to fetch. */
function atFirst(): OfflineState {
  return { at: 'preparing', doing: navigator.serviceWorker.controller ? 'checking' : 'fetching', done: 0, total: 0 }
}

class OfflineClient implements Offline {
  readonly state = signal<OfflineState>(atFirst())
  readonly available = signal(false)
  readonly update = { available: this.available, accept: () => this.accept() }
  private registration: ServiceWorkerRegistration | undefined
  private accepted = false

  start(): void {
    navigator.serviceWorker.addEventListener('message', ({ data }: MessageEvent<FromServiceWorker>) => {
      // News of a later version being fetched says nothing of the one that is ready.
      if (this.state.value.at !== 'ready') this.hear(data)
    })
    navigator.serviceWorker.addEventListener('controllerchange', () => {
      if (this.accepted) location.reload()
    })
    document.addEventListener('visibilitychange', () => void this.look())
    addEventListener('online', () => void this.look())
    this.retry()
  }

  retry(): void {
    this.state.value = atFirst()
    this.prepare().catch((error: Error) => this.hear({ type: 'failed', reason: error.message }))
  }

  private async prepare(): Promise<void> {
    if (!this.registration) {
      // The script itself always comes from the server, or an old one could keep itself alive.
      const taken: ServiceWorkerRegistration | undefined = await navigator.serviceWorker.register('./sw.js', { scope: './', updateViaCache: 'none' })
      // Some private windows take the call and give nothing back.
      if (!taken) throw new Error('this browser keeps no offline copy in this window')
      this.registration = taken
      taken.addEventListener('updatefound', () => this.follow())
    }
    this.follow()
    const active = this.registration.active ?? (await this.installed(this.registration))
    const { port1, port2 } = new MessageChannel()
    port1.onmessage = ({ data }: MessageEvent<FromServiceWorker>) => this.hear(data)
    active.postMessage({ type: 'verify' } satisfies ToServiceWorker, [port2])
  }

  /** The first version, once it is in; rejects when its files could not all be kept. */
  private installed(registration: ServiceWorkerRegistration): Promise<ServiceWorker> {
    const coming = registration.installing ?? registration.waiting
    if (!coming) return Promise.reject(new Error('the browser did not take the offline copy'))
    return new Promise((resolve, reject) => {
      const look = () => {
        if (coming.state === 'activated') resolve(coming)
        if (coming.state === 'redundant') {
          this.registration = undefined
          const { value: state } = this.state
          reject(new Error(state.at === 'failed' ? state.reason : 'the files could not all be kept'))
        }
      }
      coming.addEventListener('statechange', look)
      look()
    })
  }

  private hear(message: FromServiceWorker): void {
    if (message.type === 'verified') this.state.value = { at: 'ready' }
    else if (message.type === 'failed') this.state.value = { at: 'failed', reason: message.reason }
    else this.state.value = { at: 'preparing', doing: message.type, done: message.done, total: message.total }
  }

  /** Offer a version once it waits behind the one in use. */
  private follow(): void {
    const look = () => {
      if (this.registration?.waiting && this.registration.active) this.available.value = true
    }
    this.registration?.installing?.addEventListener('statechange', look)
    look()
  }

  private accept(): void {
    this.accepted = true
    const waiting = this.registration?.waiting
    // Another tab may have taken it already: then the new version is in place and a reload brings it.
    if (waiting) waiting.postMessage({ type: 'SKIP_WAITING' } satisfies ToServiceWorker)
    else location.reload()
  }

  /** Nobody is left on an old version: look for a new one whenever the page comes back into view or online. */
  private async look(): Promise<void> {
    if (document.visibilityState === 'visible') await this.registration?.update().catch(() => undefined)
  }
}

/** Begin once the core has answered (or cannot), so that the first answer shares neither the line nor the processor. */
export function startOffline(settled: ReadonlySignal<boolean>): Offline {
  const why = whyNot()
  if (why) {
    const never = { available: signal(false), accept: () => undefined }
    return { state: signal({ at: 'not-possible', why }), update: never, retry: () => undefined }
  }
  const client = new OfflineClient()
  let begun = false
  effect(() => {
    if (begun || !settled.value) return
    begun = true
    client.start()
  })
  return client
}

/**
 * Fetch everything again, when the user asks for it: fetched and checked first, and only then does it take the place of the
 * copy that was here. Returns why not; the copy is then as it was.
 */
export async function fetchAllAgain(): Promise<string | undefined> {
  const registration = await navigator.serviceWorker?.getRegistration()
  const newer = registration && (await newVersion(registration))
  const active = registration?.active
  if (newer) newer.postMessage({ type: 'SKIP_WAITING' } satisfies ToServiceWorker)
  else if (active) {
    const wrong = await renewed(active)
    if (wrong) return wrong
  }
  location.reload()
  return undefined
}

/** A new version that is here whole: its files are not those that were at fault. */
async function newVersion(registration: ServiceWorkerRegistration): Promise<ServiceWorker | undefined> {
  await registration.update().catch(() => undefined)
  const coming = registration.installing
  if (coming)
    await new Promise<void>((done) => {
      const look = () => coming.state !== 'installing' && done()
      coming.addEventListener('statechange', look)
      look()
    })
  return registration.waiting ?? undefined
}

function renewed(worker: ServiceWorker): Promise<string | undefined> {
  return new Promise((done) => {
    const { port1, port2 } = new MessageChannel()
    port1.onmessage = ({ data }: MessageEvent<FromServiceWorker>) => {
      if (data.type === 'verified') done(undefined)
      if (data.type === 'failed') done(data.reason)
    }
    worker.postMessage({ type: 'renew' } satisfies ToServiceWorker, [port2])
  })
}
