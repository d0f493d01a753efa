/** `build.py dev` only: a new core goes into the running Python, which need not start again for it. */
import type { PyodideInterface } from 'pyodide'
import manifest from 'virtual:runtime'
import { type Answer, loadCore } from './boot.ts'
import { unpack } from './pack.ts'

const CHANNEL = 'stanchion-dev'
const PACKAGE = 'calc'

/** In the worker: take over each new core. */
export function takeNewCores(pyodide: PyodideInterface, base: string, take: (answer: Answer) => void): void {
  const channel = new BroadcastChannel(CHANNEL)
  channel.onmessage = async ({ data }) => {
    if (data !== 'edited') return
    const arrived = await fetch(`${base}core.pack.wasm?${Date.now()}`)
    const pack = new Uint8Array(await arrived.arrayBuffer())
    pyodide.pyimport('shutil').rmtree(`${manifest.site}/${PACKAGE}`) // else a source would outlive the edit that was taken back
    unpack(pack, manifest.site, pyodide.FS)
    const { modules } = pyodide.pyimport('sys')
    for (const name of [...modules.keys()] as string[]) if (name.split('.')[0] === PACKAGE) modules.delete(name)
    pyodide.pyimport('importlib').invalidate_caches()
    take(loadCore(pyodide))
    channel.postMessage('taken')
  }
}

/** On the page: tell the worker of each edit, and ask again once it has taken it. */
export function followEdits(askAgain: () => void): void {
  const channel = new BroadcastChannel(CHANNEL)
  import.meta.hot?.on('core-edited', () => channel.postMessage('edited'))
  channel.onmessage = ({ data }) => data === 'taken' && askAgain()
}
