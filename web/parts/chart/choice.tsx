import { signal } from '@preact/signals'
import { type OverlayKind, OVERLAYS, type Shown } from './words.ts'

/** Which curves lie beside the one shown, on every chart. Each brings a label, and a phone has no room for what nobody asked for. */
const AT_FIRST: OverlayKind[] = ['answer', 'built']
const wanted = signal<ReadonlySet<OverlayKind>>(new Set(matchMedia('(width >= 1000px)').matches ? [...AT_FIRST, 'found' as const] : AT_FIRST))

/** The chart with those of its curves that are wanted beside it. */
export const chosen = (all: Shown): Shown => ({ ...all, beside: all.beside.filter((one) => one.kind === 'state' || wanted.value.has(one.kind)) })

export function OverlayChoice({ shown }: { shown: Shown }) {
  // States are chosen where they are listed.
  if (shown.beside.length === 0 || shown.kind === 'state') return null
  const flip = (kind: OverlayKind) => {
    const next = new Set(wanted.value)
    if (!next.delete(kind)) next.add(kind)
    wanted.value = next
  }
  return (
    <div class="chart-choices" role="group" aria-label={`Curves beside it, ${shown.end}`}>
      {shown.beside.map(({ kind }) => (
        <label key={kind}>
          <input type="checkbox" checked={wanted.value.has(kind)} onChange={() => flip(kind)} />
          {OVERLAYS[kind]}
        </label>
      ))}
    </div>
  )
}
