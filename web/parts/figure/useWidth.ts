import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks'

/** The width that the page gives an element, kept up to date; 0 before it is laid out and while it is hidden. */
export function useWidth<T extends HTMLElement>() {
  const place = useRef<T>(null)
  const [width, setWidth] = useState(0)
  useLayoutEffect(() => {
    const element = place.current
    if (!element) return
    const read = () => setWidth(element.clientWidth)
    read()
    const watch = new ResizeObserver(read)
    watch.observe(element)
    return () => watch.disconnect()
  }, [])
  return { place, width }
}

/** Draw again once the font is there: labels keep off each other by their measured widths. */
export function useFonts(): void {
  const [, measured] = useState(false)
  useEffect(() => void document.fonts.ready.then(() => measured(true)), [])
}
