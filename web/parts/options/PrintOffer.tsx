import { useEffect } from 'preact/hooks'
import { optionsOld, report } from '../../store/index.ts'
import { onPaper } from '../../store/paper.ts'
import { OfferSheet } from './OfferSheet.tsx'

/** The offer on paper, in place of the card, until the page is touched again. */
export function PrintOffer() {
  const now = report.value
  const ready = now?.offer && now.options && !optionsOld.value
  useEffect(() => () => void (onPaper.value = 'card'), [])
  const show = () => {
    onPaper.value = 'offer'
    // Drawn first; a system's own print dialog may come later than this returns.
    requestAnimationFrame(() => {
      print()
      const back = () => {
        onPaper.value = 'card'
        for (const kind of KINDS) removeEventListener(kind, back, true)
      }
      for (const kind of KINDS) addEventListener(kind, back, true)
    })
  }
  return (
    <>
      <button type="button" class="filled options-print" disabled={!ready} onClick={show}>
        Print the offer
      </button>
      {now?.offer && onPaper.value === 'offer' && <OfferSheet report={now} offer={now.offer} />}
    </>
  )
}

const KINDS = ['pointerdown', 'keydown'] as const
