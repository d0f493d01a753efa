import type { PyodideInterface } from 'pyodide'

type FileSystem = PyodideInterface['FS']

/** Files by length, back to back, behind a JSON header whose length the first four bytes hold. */
export function unpack(pack: Uint8Array, site: string, fs: FileSystem): void {
  const length = new DataView(pack.buffer).getUint32(0, true)
  const entries: [string, number][] = JSON.parse(new TextDecoder().decode(pack.subarray(4, 4 + length)))
  const made = new Set<string>()
  let at = 4 + length
  for (const [path, size] of entries) {
    const target = `${site}/${path}`
    const folder = target.slice(0, target.lastIndexOf('/'))
    if (!made.has(folder)) fs.mkdirTree(folder)
    made.add(folder)
    fs.writeFile(target, pack.subarray(at, at + size), { canOwn: true })
    at += size
  }
}
