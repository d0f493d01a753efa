import { useRef } from 'preact/hooks'
import { importFile } from '../../store/files.ts'

/** Open a job file: what it holds is added, and replaces nothing. */
export function FileChooser({ act }: { act: (doing: Promise<string | undefined>) => void }) {
  const chosen = useRef<HTMLInputElement>(null)
  const read = async () => {
    const file = chosen.current?.files?.[0]
    if (!file) return undefined
    const { refused } = await importFile(file)
    // The same file, put right, may be chosen again.
    if (chosen.current) chosen.current.value = ''
    return refused.join(' ')
  }
  return (
    <label class="button">
      Open file
      <input ref={chosen} type="file" class="aside" accept=".json,application/json" onChange={() => act(read())} />
    </label>
  )
}
