import { useSignal } from '@preact/signals'
import { lazily } from '../../store/lazily.ts'
import type { Shared } from '../../store/share.ts'
import './jobs.css'

/** A link to be copied, and its QR code where one scans well. */
export function Handed({ shared, what }: { shared: Shared; what: string }) {
  const copied = useSignal('')
  const copy = async (text: string) => {
    const done = await navigator.clipboard?.writeText(text).then(
      () => true,
      () => false,
    )
    copied.value = done ? 'Copied.' : 'Copy it from the field.'
  }
  return (
    <div data-shared>
      <p class="quiet">{what}</p>
      <label class="ask">
        <span>Link</span>
        <input class="wide" type="text" readOnly value={shared.link} onFocus={(event) => event.currentTarget.select()} />
      </label>
      <button type="button" onClick={() => void copy(shared.link)}>
        Copy the link
      </button>
      <span role="status">{copied.value}</span>
      <Qr text={shared.forQr} />
    </div>
  )
}

const code = lazily(() => import('./qr.ts'))

function Qr({ text }: { text: string }) {
  const made = code.value?.qr(text)
  if (made === undefined) return null
  if (made === null) return <p class="quiet">This job says too much for a QR code that scans well. Use the link or the file.</p>
  return (
    <svg class="qr" role="img" aria-label="QR code of the link" viewBox={`0 0 ${made.size} ${made.size}`} shape-rendering="crispEdges">
      <path d={made.path} />
    </svg>
  )
}
