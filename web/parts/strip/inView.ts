import { useEffect, useState } from 'preact/hooks'
import type { End } from '../../core/report.ts'
import { whole } from '../../look/whole.ts'

/** The end whose part is at hand: rear while its part crosses the middle of the screen or holds the focus, else front. */
export function useEndInView(): End {
  const [end, setEnd] = useState<End>('front')
  useEffect(() => {
    const rear = document.getElementById('rear')
    if (!rear) return
    const watch = new IntersectionObserver(([entry]) => setEnd(entry?.isIntersecting ? 'rear' : 'front'), { rootMargin: '-45% 0px -45% 0px' })
    const focused = ({ target }: FocusEvent) => {
      const part = (target as Element).closest('#springs, #oil, #rear')
      if (part) setEnd(part.id === 'rear' ? 'rear' : 'front')
    }
    watch.observe(rear)
    document.addEventListener('focusin', focused)
    return () => {
      watch.disconnect()
      document.removeEventListener('focusin', focused)
    }
  }, [whole.value])
  return end
}
