/**
 * The tuned start of the runtime, in the worker: everything is in flight at once, the wasm compiles while it
 * arrives, packs of bytecode go straight into the file system. Pyodide would fetch for itself, later, and only
 * warn when its wasm cannot be used; so it gets our wasm and library, and our errors end the start.
 */
import type { loadPyodide, PyodideInterface } from 'pyodide'
import type { Step } from './boundary.ts'
import { BootError, Files } from './files.ts'
import { unpack } from './pack.ts'
import manifest from 'virtual:runtime'

const WASM = 'pyodide.asm.wasm'
const LIBRARY = 'stdlib.zip.wasm'
const PACKS = ['numpy.pack.wasm', 'core.pack.wasm']

export type Answer = (text: string) => string
export type Progress = (step: Step, done: number, total: number) => void

interface HandedOver {
  /** Rejects when the wasm cannot be instantiated: Pyodide only warns of it and waits on. */
  refused: Promise<never>
  undo: () => void
}

/** Let Pyodide's own two fetches end in what is already on its way. */
function handOver(files: Files, module: Promise<WebAssembly.Module>, library: Promise<Uint8Array<ArrayBuffer>>): HandedOver {
  const { fetch: plainFetch } = self
  const { instantiateStreaming } = WebAssembly
  let refuse: (error: BootError) => void
  const refused = new Promise<never>((_, reject) => {
    refuse = reject
  })
  self.fetch = async (input, init) => {
    const url = input instanceof Request ? input.url : String(input)
    if (files.isOf(WASM, url)) return new Response()
    if (files.isOf(LIBRARY, url)) return new Response(await library)
    return plainFetch(input, init)
  }
  WebAssembly.instantiateStreaming = async (_source, imports) => {
    const compiled = await module
    const instance = await WebAssembly.instantiate(compiled, imports).catch((error: unknown) => {
      refuse(new BootError('damaged-file', WASM, String(error)))
      throw error
    })
    return { module: compiled, instance }
  }
  const undo = () => {
    self.fetch = plainFetch
    WebAssembly.instantiateStreaming = instantiateStreaming
  }
  return { refused, undo }
}

/** Only what the start cannot do without is counted, in bytes of the files themselves. */
function counter(progress: Progress): (bytes: number) => void {
  const total = [WASM, LIBRARY, ...PACKS].reduce((sum, name) => sum + (manifest.files[name]?.bytes ?? 0), 0)
  let done = 0
  return (bytes) => {
    done += bytes
    progress('fetching', Math.min(done, total), total)
  }
}

export async function boot(base: string, verify: boolean, progress: Progress): Promise<{ answer: Answer; pyodide: PyodideInterface }> {
  const files = new Files(base, verify, counter(progress))
  const module = files.compiled(WASM)
  const library = files.bytes(LIBRARY)
  const scripts = Promise.all([files.script('pyodide.mjs'), files.script('pyodide.asm.mjs')])
  const packs = Promise.all(PACKS.map((name) => files.bytes(name)))
  const { refused, undo } = handOver(files, module, library)

  const started = scripts.then(([front, back]) =>
    (front!.loadPyodide as typeof loadPyodide)({
      indexURL: base,
      stdLibURL: files.url(LIBRARY),
      lockFileContents: manifest.lock as never,
      createPyodideModule: back!.default as never,
      fsInit: async (fs) => {
        for (const pack of await packs) unpack(pack, manifest.site, fs)
      },
    }),
  )
  // Pyodide never settles when its wasm or its library fails, so each part may end the start by itself.
  const failing = Promise.all([module, library, packs, scripts]).then(() => {
    progress('starting', 0, 1)
    return started
  })
  const pyodide = await Promise.race([started, failing, refused])
  undo()
  progress('loading', 0, 1)
  return { answer: loadCore(pyodide), pyodide }
}

export function loadCore(pyodide: PyodideInterface): Answer {
  try {
    return pyodide.pyimport('calc.boundary').answer as Answer
  } catch (error) {
    throw new BootError('broken-core', undefined, String(error))
  }
}
