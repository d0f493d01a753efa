import { useSignal } from '@preact/signals'
import { exportOne, save } from '../../store/files.ts'
import { shareBySystem, type Shared, shareLink } from '../../store/share.ts'
import { Handed } from './Handed.tsx'
import './jobs.css'

/** Hand the open job on: its file, its link, the system's share sheet, a QR code where one scans well. */
export function ShareJob({ id }: { id: string }) {
  const shared = useSignal<Shared | undefined>(undefined)
  const link = async () => {
    shared.value = await shareLink(id)
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
      {shared.value && <Handed shared={shared.value} what="The whole job is in the link: whoever has it can read it. It is sent to no server." />}
    </div>
  )
}
