import { useSignal } from '@preact/signals'
import { useEffect } from 'preact/hooks'
import { job } from '../../store/index.ts'
import { lazily } from '../../store/lazily.ts'
import { linkOf } from '../../store/share.ts'

const code = lazily(() => import('../door/qr.ts'))

/** What a square measures on paper: a phone reads 0.35 mm off a sheet, and no less is sure to be read. */
const SQUARE = 0.36

/** The job as a QR code on the card, by which it opens again; black on white in every light. Where all of it is too much, its options go. */
export function PrintedQr() {
  const texts = useSignal<string[]>([])
  const now = job.value
  useEffect(() => {
    const { offer, ...others } = now
    void Promise.all((offer ? [now, others] : [now]).map(linkOf)).then((links) => {
      if (job.value === now) texts.value = links.map(({ forQr }) => forQr)
    })
  }, [now])
  if (texts.value.length === 0 || !code.value) return null
  const { qr, ON_PAPER } = code.value
  const [all, but] = texts.value.map((text) => qr(text, ON_PAPER))
  const made = all ?? but
  if (!made) return <p class="card-note">This job says too much for a QR code that scans off paper. Keep its file or its link.</p>
  const side = `${(made.size * SQUARE).toFixed(1)}mm`
  return (
    <figure class="card-qr" style={{ width: side }}>
      <svg role="img" aria-label="QR code that opens this job" viewBox={`0 0 ${made.size} ${made.size}`} shape-rendering="crispEdges" style={{ width: side, height: side }}>
        <rect width={made.size} height={made.size} fill="#fff" />
        <path d={made.path} fill="#000" />
      </svg>
      <figcaption>Opens this job{all ? '' : ', its options left out'}</figcaption>
    </figure>
  )
}
