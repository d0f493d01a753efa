import { signal } from '@preact/signals'
import { useEffect, useRef } from 'preact/hooks'

/** The stroke at which the leg is shown [mm]; null until a hand has moved it. Kept while places come and go. */
const held = signal<number | null>(null)

const KEY_STEP = 5
const WHEEL_STEP = 5
/** Px that a finger may wander in a tap. */
const TAP = 6

/** The stroke shown, within what the leg can do: half of it at first. */
export const strokeShown = (last: number): number => Math.min(held.value ?? Math.round(last / 2), last)

export function moveTo(stroke: number, last: number): void {
  held.value = Math.min(Math.max(stroke, 0), last)
}

/** Keys that move by 5 mm; others are the slider's own. True where it was one of them. */
export function keyMoves(key: string, stroke: number, last: number): boolean {
  const by = { ArrowUp: KEY_STEP, ArrowRight: KEY_STEP, ArrowDown: -KEY_STEP, ArrowLeft: -KEY_STEP }[key]
  if (by === undefined) return false
  moveTo(Math.round(stroke) + by, last)
  return true
}

export interface Hold {
  last: number
  stroke: number
  /** Px of screen, upwards or to the right, per mm of stroke. */
  scale: number
  along: 'x' | 'y'
  /** Where the hand taps, in px of the element. */
  onTap?: (x: number, y: number) => void
}

/** An element that the hand drags or wheels through the stroke. */
export function useHold<T extends HTMLElement>(hold: Hold) {
  const place = useRef<T>(null)
  const now = useRef(hold)
  now.current = hold
  useEffect(() => {
    const element = place.current!
    let start: { at: number; stroke: number; x: number; y: number; moved: boolean } | null = null
    const along = (event: PointerEvent) => (now.current.along === 'y' ? -event.clientY : event.clientX)
    const down = (event: PointerEvent) => {
      if (event.button !== 0) return
      start = { at: along(event), stroke: now.current.stroke, x: event.clientX, y: event.clientY, moved: false }
      element.setPointerCapture(event.pointerId)
    }
    const move = (event: PointerEvent) => {
      if (!start) return
      start.moved ||= Math.hypot(event.clientX - start.x, event.clientY - start.y) > TAP
      if (start.moved) moveTo(Math.round(start.stroke + (along(event) - start.at) / now.current.scale), now.current.last)
    }
    const up = (event: PointerEvent) => {
      if (start && !start.moved && event.type === 'pointerup') {
        const box = element.getBoundingClientRect()
        now.current.onTap?.(event.clientX - box.left, event.clientY - box.top)
      }
      start = null
    }
    // At either end of the stroke the page scrolls on.
    const wheel = (event: WheelEvent) => {
      const { stroke, last } = now.current
      const next = stroke - Math.sign(event.deltaY) * WHEEL_STEP
      if (event.ctrlKey || event.deltaY === 0 || (stroke <= 0 && next < 0) || (stroke >= last && next > last)) return
      event.preventDefault()
      moveTo(next, last)
    }
    const listen = [
      ['pointerdown', down],
      ['pointermove', move],
      ['pointerup', up],
      ['pointercancel', up],
      ['wheel', wheel],
    ] as [string, EventListener][]
    for (const [name, heard] of listen) element.addEventListener(name, heard, { passive: false })
    return () => {
      for (const [name, heard] of listen) element.removeEventListener(name, heard)
    }
  }, [])
  return place
}
