/** The runtime's files, fetched and checked. Runs in the worker. */
import type { Cause } from './boundary.ts'
import manifest from 'virtual:runtime'

export class BootError extends Error implements Cause {
  constructor(
    readonly reason: Cause['reason'],
    readonly file: string | undefined,
    readonly detail: string,
  ) {
    super(detail)
  }
}

export type Count = (bytes: number) => void

/** The browser's own fetch: boot.ts puts another in its place for Pyodide, which would lead back here. */
const plainFetch = self.fetch.bind(self)

const text = (error: unknown) => (error instanceof Error ? `${error.name}: ${error.message}` : String(error))

export class Files {
  constructor(
    private readonly base: string,
    private readonly verify: boolean,
    private readonly count: Count,
  ) {}

  /** A file's address names its content, so that no cache can answer with another version's. */
  url(name: string): string {
    const wanted = manifest.files[name]
    return new URL(wanted ? `${name}?${wanted.sha256.slice(0, 8)}` : name, this.base).href
  }

  /** Whether an address is a file's; Pyodide asks by the bare name. */
  isOf(name: string, url: string): boolean {
    return url === this.url(name) || url === new URL(name, this.base).href
  }

  /** A file's bytes, checked. A damaged one is fetched once more past the HTTP cache, which may hold an old one. */
  async bytes(name: string): Promise<Uint8Array<ArrayBuffer>> {
    return this.twice((cache) => this.open(name, cache).then((response) => this.read(name, response)))
  }

  /** Compile while the bytes arrive; they are checked from a copy of the stream. */
  async compiled(name: string): Promise<WebAssembly.Module> {
    return this.twice(async (cache) => {
      const response = await this.open(name, cache)
      const copy = this.verify ? this.read(name, response.clone()) : undefined
      const module = WebAssembly.compileStreaming(response)
      // The check speaks first: a damaged file fails to compile too, and "damaged" is the truer word.
      const [checked, compiled] = await Promise.allSettled([copy, module])
      if (checked.status === 'rejected') throw checked.reason
      if (compiled.status === 'fulfilled') return compiled.value
      // A host that names another type cannot be streamed from.
      const again = () => this.open(name, cache).then((response) => this.read(name, response))
      const bytes = await (copy ?? again())
      return WebAssembly.compile(bytes).catch((error: unknown) => {
        throw new BootError('damaged-file', name, text(error))
      })
    })
  }

  /** Import one of the runtime's scripts; when that fails, find out what is wrong with the file. */
  async script(name: string): Promise<Record<string, unknown>> {
    try {
      return await import(/* @vite-ignore */ this.url(name))
    } catch (error) {
      const response = await this.open(name, 'reload')
      await this.read(name, response)
      throw new BootError('damaged-file', name, text(error))
    }
  }

  private async twice<T>(attempt: (cache: RequestCache) => Promise<T>): Promise<T> {
    try {
      return await attempt('default')
    } catch (error) {
      if (!(error instanceof BootError) || error.reason !== 'damaged-file') throw error
      return attempt('reload')
    }
  }

  private async open(name: string, cache: RequestCache): Promise<Response> {
    const response = await plainFetch(this.url(name), { cache }).catch((error: unknown) => {
      throw new BootError('no-connection', name, text(error))
    })
    if (response.ok) return response
    throw new BootError(response.status === 404 ? 'missing-file' : 'no-connection', name, `HTTP ${response.status}`)
  }

  private async read(name: string, response: Response): Promise<Uint8Array<ArrayBuffer>> {
    const wanted = manifest.files[name]
    if (!wanted) throw new BootError('missing-file', name, 'not in the list of the runtime')
    const bytes = new Uint8Array(wanted.bytes)
    let length = 0
    const reader = response.body!.getReader()
    for (;;) {
      const { done, value } = await reader.read().catch((error: unknown) => {
        throw new BootError('no-connection', name, `broke off after ${length} of ${wanted.bytes} bytes: ${text(error)}`)
      })
      if (done) break
      if (length + value.length <= bytes.length) bytes.set(value, length)
      length += value.length
      this.count(value.length)
    }
    if (length !== wanted.bytes) throw new BootError('damaged-file', name, `${length} bytes, ${wanted.bytes} expected`)
    if (this.verify) await this.check(name, bytes, wanted.sha256)
    return bytes
  }

  /** Plain http on a network address has no digest: there the length is all that is checked. */
  private async check(name: string, bytes: Uint8Array<ArrayBuffer>, sha256: string): Promise<void> {
    if (!isSecureContext) return
    const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes))
    const hex = Array.from(digest, (byte) => byte.toString(16).padStart(2, '0')).join('')
    if (hex !== sha256) throw new BootError('damaged-file', name, `sha256 ${hex}, ${sha256} expected`)
  }
}
