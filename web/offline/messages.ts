/** What passes between the page and its service worker. */
export type ToServiceWorker = { type: 'SKIP_WAITING' } | { type: 'verify' } | { type: 'renew' }

export type FromServiceWorker =
  | { type: 'fetching' | 'checking'; done: number; total: number }
  | { type: 'verified'; total: number }
  | { type: 'failed'; reason: string }
