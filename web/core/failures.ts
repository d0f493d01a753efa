import { VERSION } from '../generated/version.ts'
import type { Cause, Reason } from './boundary.ts'

/** A failed start in words: what happened, why, the way out, and a report to copy. */
export interface Failure extends Cause {
  what: string
  why: string
  wayOut: string
  report: string
}

type Words = (file: string) => { what: string; why: string; wayOut: string }

const NOT_COMPUTED = 'Nothing new can be computed.'

const WORDS: Record<Reason, Words> = {
  'no-webassembly': () => ({
    what: NOT_COMPUTED,
    why: 'This browser has WebAssembly switched off (a lockdown mode or a policy does that).',
    wayOut: 'Allow this site in the lockdown settings, or open the page in another browser. Saved answers stay readable.',
  }),
  'old-browser': () => ({
    what: NOT_COMPUTED,
    why: 'This browser is too old: it takes Safari 16.4, Chrome 112 or Firefox 114, or newer.',
    wayOut: 'Update the browser or open the page in another one. Saved answers stay readable.',
  }),
  'missing-file': (file) => ({
    what: NOT_COMPUTED,
    why: `The file ${file} is not where it should be on the server.`,
    wayOut: 'Try again in a minute, a new version may be on its way. If it stays, send the report to whoever runs this site.',
  }),
  'damaged-file': (file) => ({
    what: NOT_COMPUTED,
    why: `The file ${file} arrived incomplete or changed.`,
    wayOut: 'Fetch everything again while you have a connection.',
  }),
  'no-connection': (file) => ({
    what: NOT_COMPUTED,
    why: `The file ${file} could not be fetched: the connection failed.`,
    wayOut: 'Find a connection and try again. Once the page says ready offline it needs none.',
  }),
  'blocked-worker': () => ({
    what: NOT_COMPUTED,
    why: 'The part that computes could not be started: its script was refused or did not arrive.',
    wayOut: 'Try again. If it stays, switch off blockers for this site or use another browser.',
  }),
  stalled: () => ({
    what: NOT_COMPUTED,
    why: 'Starting came to a halt: nothing has moved for a while.',
    wayOut: 'Try again, with a better connection if yours is weak.',
  }),
  'broken-core': () => ({
    what: NOT_COMPUTED,
    why: 'The part that computes stopped with an error of its own.',
    wayOut: 'Try again. If it stays, fetch everything again, and send the report to whoever runs this site.',
  }),
  stuck: () => ({
    what: NOT_COMPUTED,
    why: 'Two answers in a row took too long and were stopped.',
    wayOut: 'Undo your last change and try again.',
  }),
}

/** The report holds no job data, so that it can be sent on without a second thought. */
function report(cause: Cause): string {
  return [
    `Stanchion ${VERSION}, ${new Date().toISOString()}`,
    `reason: ${cause.reason}${cause.file ? `, file: ${cause.file}` : ''}`,
    `detail: ${cause.detail}`,
    `page: ${location.origin}${location.pathname}, secure: ${isSecureContext}, online: ${navigator.onLine}`,
    `from the offline copy: ${Boolean(navigator.serviceWorker?.controller)}`,
    `browser: ${navigator.userAgent}`,
  ].join('\n')
}

export function inWords(cause: Cause): Failure {
  return { ...cause, ...WORDS[cause.reason](cause.file ?? '(unnamed)'), report: report(cause) }
}
