import { useSignal } from '@preact/signals'
import { lazily } from '../../store/lazily.ts'
import { exportOne, save } from '../../store/files.ts'
import { shareBySystem, type Shared, shareLink } from '../../store/share.ts'
import './jobs.css'

/** Hand the open job on: its file, its link, the system's share sheet, a QR code where one scans well. */
export function ShareJob({ id }: { id: string }) {
  const shared = useSignal<Shared | undefined>(undefined)
  const copied = useSignal('')
  const link = async () => {
    shared.value = await shareLink(id)
  }
  const copy = async (text: string) => {
    const done = await navigator.clipboard?.writeText(text).then(
      () => true,
      () => false,
    )
    copied.value = done ? 'Copied.' : 'Copy it from the field.'
  }
  return (
    <div class="share">
      <div class="button-row">
        <button type="button" onClick={() => void exportOne(id).then(save)}>
          Save the job file
        </button>
        <button type="button" onClick={() => void link()}>
          Make a link
        </button>
        {'share' in navigator && (
          <button type="button" onClick={() => void shareBySystem(id)}>
            Share
          </button>
        )}
      </div>
      {shared.value && (
        <div data-shared>
          <p class="quiet">The whole job is in the link: whoever has it can read it. It is sent to no server.</p>
          <label class="ask">
            <span>Link</span>
            <input class="wide" type="text" readOnly value={shared.value.link} onFocus={(event) => event.currentTarget.select()} />
          </label>
          <button type="button" onClick={() => void copy(shared.value!.link)}>
            Copy the link
          </button>
          <span role="status">{copied.value}</span>
          <Qr text={shared.value.forQr} />
        </div>
      )}
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
