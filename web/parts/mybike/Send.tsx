import { useSignal } from '@preact/signals'
import { useEffect } from 'preact/hooks'
import type { JobDocument } from '../../store/document.ts'
import { fileOf, importText, save } from '../../store/files.ts'
import { ask, reply } from '../../store/mybike.ts'
import { go } from '../../store/place.ts'
import { linkOf, shareDocument, type Shared } from '../../store/share.ts'
import { today } from '../../store/today.ts'
import { Handed } from '../door/Handed.tsx'

/** The readings handed on: a link or its QR code, which opens at the tuner's as a job of its own. */
export function Send() {
  const name = useSignal('')
  const owner = useSignal('')
  const shared = useSignal<Shared | undefined>(undefined)
  const wrong = useSignal('')
  useEffect(() => {
    if (!reply.value) void ask()
  }, [])
  const job = reply.value?.job
  const made: JobDocument | undefined = job && { ...job, name: name.value.trim(), owner: owner.value.trim(), date: today() }
  const key = JSON.stringify(made)
  useEffect(() => {
    if (made) void linkOf(made).then((found) => (shared.value = found))
  }, [key])
  const openHere = async () => {
    const done = await importText(key)
    wrong.value = done.refused.join(' ')
    if (done.opened > 0) go('check', { top: true })
  }
  return (
    <div class="mybike-send">
      <h2 tabIndex={-1}>Send your readings to your tuner</h2>
      <p>Your tuner opens the link, or holds a phone over the code. The readings open as a job, each marked as yours.</p>
      <label class="ask">
        <span>Bike</span>
        <input class="wide" type="text" autocomplete="off" maxLength={80} value={name.value} onInput={(event) => (name.value = event.currentTarget.value)} />
      </label>
      <label class="ask">
        <span>Your name</span>
        <input class="wide" type="text" autocomplete="off" maxLength={80} value={owner.value} onInput={(event) => (owner.value = event.currentTarget.value)} />
      </label>
      {made && (
        <div class="boxes">
          {'share' in navigator && (
            <button type="button" onClick={() => void shareDocument(made)}>
              Share
            </button>
          )}
          <button type="button" onClick={() => save(fileOf(made))}>
            Save as a file
          </button>
          <button type="button" onClick={() => void openHere()}>
            Open as a job here
          </button>
        </div>
      )}
      <p class="attend" role="alert">
        {wrong.value}
      </p>
      {shared.value && <Handed shared={shared.value} what="All your readings are in the link: who has it can read them. It goes to no server." />}
    </div>
  )
}
