/**
 * A job in a link: packed into the fragment, which no browser sends to a server. "#job=1." and letters for people to pass on,
 * "#job=1n" and digits for a QR code, which holds digits in less than half the room of letters.
 */
import type { JobDocument } from './document.ts'

const LETTERS = '#job=1.'
const DIGITS = '#job=1n'
/** What a link may unpack to; the largest job, with the largest offer, is half of it. */
const MOST = 500_000
// Seven bytes are at most seventeen digits.
const BYTES = 7
const WIDTHS = [0, 3, 5, 8, 10, 13, 15, 17]

/** Whether a fragment holds a job, of this version or of another. */
export const isLink = (hash: string): boolean => hash.startsWith('#job=')

export async function pack(job: JobDocument): Promise<{ letters: string; digits: string }> {
  const stream = new Blob([JSON.stringify(job)]).stream().pipeThrough(new CompressionStream('deflate-raw'))
  const bytes = new Uint8Array(await new Response(stream).arrayBuffer())
  return { letters: LETTERS + toLetters(bytes), digits: DIGITS + toDigits(bytes) }
}

/** The text of the job in a fragment. Throws words for people. */
export async function unpack(hash: string): Promise<string> {
  const bytes = hash.startsWith(LETTERS) ? fromLetters(hash.slice(LETTERS.length)) : hash.startsWith(DIGITS) ? fromDigits(hash.slice(DIGITS.length)) : null
  if (!bytes) throw new Error(/^#job=(?!1[.n])\d/.test(hash) ? 'This link was made by a newer version. Update, then open it.' : 'This link holds no job, or only a part of one.')
  const reader = new Blob([bytes]).stream().pipeThrough(new DecompressionStream('deflate-raw')).getReader()
  const decoder = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true })
  let text = ''
  for (let length = 0; ; ) {
    const { done, value } = await reader.read().catch(() => {
      throw new Error('This link is damaged: a part of it is missing.')
    })
    if (done) return text + decoder.decode()
    length += value.length
    if (length > MOST) {
      void reader.cancel()
      throw new Error('This link unpacks to more than any job holds, so it is not opened.')
    }
    text += decoder.decode(value, { stream: true })
  }
}

const toLetters = (bytes: Uint8Array) => btoa(String.fromCharCode(...bytes)).replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '')

function fromLetters(text: string): Uint8Array<ArrayBuffer> | null {
  try {
    return Uint8Array.from(atob(text.replaceAll('-', '+').replaceAll('_', '/')), (letter) => letter.charCodeAt(0))
  } catch {
    return null
  }
}

function toDigits(bytes: Uint8Array): string {
  let digits = ''
  for (let at = 0; at < bytes.length; at += BYTES) {
    const some = bytes.subarray(at, at + BYTES)
    const number = some.reduce((sum, byte) => sum * 256n + BigInt(byte), 0n)
    digits += String(number).padStart(WIDTHS[some.length]!, '0')
  }
  return digits
}

function fromDigits(digits: string): Uint8Array<ArrayBuffer> | null {
  const full = WIDTHS[BYTES]!
  const rest = WIDTHS.indexOf(digits.length % full)
  if (!/^\d*$/.test(digits) || rest < 0) return null
  const bytes: number[] = []
  for (let at = 0; at < digits.length; at += full) {
    let number = BigInt(digits.slice(at, at + full))
    const some = Array.from({ length: digits.length - at < full ? rest : BYTES }, () => {
      const byte = Number(number & 255n)
      number >>= 8n
      return byte
    })
    bytes.push(...some.reverse())
    if (number > 0n) return null
  }
  return new Uint8Array(bytes)
}
