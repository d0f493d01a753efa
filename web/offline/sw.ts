/// <reference lib="webworker" />
/**
 * The service worker: keeps every file of the site (Workbox's precache), checks them when the page asks, and
 * becomes the new version only when the page says so.
 */
import { cacheNames, registerQuotaErrorCallback } from 'workbox-core'
import { addPlugins, getCacheKeyForURL, matchPrecache, precacheAndRoute } from 'workbox-precaching'
import { registerRoute } from 'workbox-routing'
import type { FromServiceWorker, ToServiceWorker } from './messages.ts'

declare const self: ServiceWorkerGlobalScope

/** Written in by the build: every file of the site. */
const FILES = self.__WB_MANIFEST as { url: string; revision: string | null; integrity: string }[]
let fetched = 0

async function tellPages(message: FromServiceWorker): Promise<void> {
  for (const page of await self.clients.matchAll({ type: 'window', includeUncontrolled: true })) page.postMessage(message)
}

addPlugins([
  {
    // Reuse what the page has just fetched, and leave it as it is: a fresh answer would part the browser's copy from
    // its compiled code. Where the address does not name the content (Workbox says "reload") the host is asked
    // whether it has changed. The integrity of every entry refuses a wrong file either way.
    requestWillFetch: async ({ request }) =>
      new Request(request, { cache: request.cache === 'reload' ? 'no-cache' : 'force-cache' }),
    fetchDidSucceed: async ({ response }) => {
      fetched += 1
      await tellPages({ type: 'fetching', done: fetched, total: FILES.length })
      return response
    },
    fetchDidFail: async ({ request, error }) =>
      tellPages({ type: 'failed', reason: `${new URL(request.url).pathname}: ${error.message}` }),
  },
])
registerQuotaErrorCallback(async () => tellPages({ type: 'failed', reason: 'this device has no room left for the files' }))

// The machine code of an earlier visit hangs on the copy that the browser keeps by itself, so that copy goes first,
// however old; a phone may drop it at any time, and then ours answers. "reload" asks past it: it was damaged.
registerRoute(
  ({ url, request }) => url.pathname.endsWith('/pyodide.asm.wasm') && request.cache !== 'reload',
  async ({ request }) => {
    const own = await fetch(request.url, { cache: 'only-if-cached', mode: 'same-origin' }).catch(() => undefined)
    return own?.ok ? own : ((await matchPrecache(request)) ?? fetch(request))
  },
)
precacheAndRoute(FILES)

self.addEventListener('activate', (event) => event.waitUntil(self.clients.claim()))

const base64 = (digest: ArrayBuffer) => btoa(String.fromCharCode(...new Uint8Array(digest)))

async function isWhole(cache: Cache, key: string, integrity: string): Promise<boolean> {
  const held = await cache.match(key)
  if (!held) return false
  return integrity === `sha256-${base64(await crypto.subtle.digest('SHA-256', await held.arrayBuffer()))}`
}

/** Read every file back and compare its hash; fetch once more what is missing or damaged. */
async function verify(tell: (message: FromServiceWorker) => void): Promise<void> {
  const cache = await caches.open(cacheNames.precache)
  for (const [index, { url, integrity }] of FILES.entries()) {
    const key = getCacheKeyForURL(url)!
    if (!(await isWhole(cache, key, integrity))) {
      const fresh = await fetch(url, { cache: 'no-cache', integrity }).catch(() => undefined)
      if (!fresh?.ok) return tell({ type: 'failed', reason: `${url} is missing or damaged, and could not be fetched` })
      await cache.put(key, fresh)
      if (!(await isWhole(cache, key, integrity))) return tell({ type: 'failed', reason: `${url} could not be stored` })
    }
    tell({ type: 'checking', done: index + 1, total: FILES.length })
  }
  tell({ type: 'verified', total: FILES.length })
}

const RENEWED = 'stanchion-renewed'

/** Fetch every file past all copies and check it; only when all are here do they take the place of those that were. */
async function renew(tell: (message: FromServiceWorker) => void): Promise<void> {
  await caches.delete(RENEWED)
  const fresh = await caches.open(RENEWED)
  try {
    for (const [index, { url, integrity }] of FILES.entries()) {
      const answer = await fetch(url, { cache: 'reload', integrity }).catch(() => undefined)
      if (!answer?.ok) return tell({ type: 'failed', reason: `${url} could not be fetched; the copy that was here is kept` })
      await fresh.put(getCacheKeyForURL(url)!, answer)
      tell({ type: 'fetching', done: index + 1, total: FILES.length })
    }
    const cache = await caches.open(cacheNames.precache)
    for (const { url, integrity } of FILES) {
      const key = getCacheKeyForURL(url)!
      if (!(await isWhole(fresh, key, integrity))) return tell({ type: 'failed', reason: `${url} could not be stored; the copy that was here is kept` })
    }
    for (const { url } of FILES) {
      const key = getCacheKeyForURL(url)!
      await cache.put(key, (await fresh.match(key))!)
    }
    tell({ type: 'verified', total: FILES.length })
  } finally {
    await caches.delete(RENEWED)
  }
}

self.addEventListener('message', (event) => {
  const message = event.data as ToServiceWorker
  // The name that workbox-window sends when the page accepts the new version.
  if (message.type === 'SKIP_WAITING') event.waitUntil(self.skipWaiting())
  const act = { verify, renew, SKIP_WAITING: undefined }[message.type]
  if (act) {
    const port = event.ports[0]!
    const tell = (answer: FromServiceWorker) => port.postMessage(answer)
    event.waitUntil(act(tell).catch((error: unknown) => tell({ type: 'failed', reason: String(error) })))
  }
})
