import { useSignal } from '@preact/signals'
import { report } from '../../store/index.ts'
import './bench.css'

/** What the customer is sent, to copy or to hand to the system's share sheet. */
export function Message() {
  const said = useSignal('')
  const paragraphs = report.value?.message ?? []
  if (paragraphs.length === 0) return <p class="quiet">Neither end has anything to tell yet.</p>
  const text = paragraphs.join('\n\n')
  const copy = async () => {
    const done = await navigator.clipboard?.writeText(text).then(
      () => true,
      () => false,
    )
    said.value = done ? 'Copied.' : 'This browser does not let a page copy. Mark the text and copy it.'
  }
  return (
    <div data-message>
      <div class="message" tabIndex={0} role="region" aria-label="Message to the customer">
        {paragraphs.map((words) => (
          <p key={words}>{words}</p>
        ))}
      </div>
      <div class="button-row">
        <button type="button" onClick={() => void copy()}>
          Copy the message
        </button>
        {'share' in navigator && (
          // Closed without sharing: nothing to say of that.
          <button type="button" onClick={() => void navigator.share({ text }).catch(() => undefined)}>
            Share the message
          </button>
        )}
      </div>
      <span role="status">{said.value}</span>
    </div>
  )
}
