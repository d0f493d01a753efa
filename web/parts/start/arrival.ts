import { useEffect, useRef } from 'preact/hooks'

/** Whatever is let down under the hand takes the focus. */
export function useArrival<T extends HTMLElement>() {
  const place = useRef<T>(null)
  useEffect(() => {
    place.current?.focus({ preventScroll: true })
    place.current?.scrollIntoView({ block: 'nearest' })
  }, [])
  return place
}
