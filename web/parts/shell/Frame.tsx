import { useSignalEffect } from '@preact/signals'
import type { ComponentChildren } from 'preact'
import { useLayoutEffect, useRef } from 'preact/hooks'
import { wanted } from '../../store/folds.ts'
import { type Room, scrolledTo } from '../../store/place.ts'

let arrived: Room | '' = ''

/** What every place has: its name as a heading that takes the focus on arrival, its old scroll position, and the field it was entered for. */
export function Frame({ room, name, children }: { room: Room; name: string; children: ComponentChildren }) {
  const title = useRef<HTMLHeadingElement>(null)
  useLayoutEffect(() => {
    toOldPlace(scrolledTo(room), TRIES)
    // Not on the first arrival: whoever opens the page starts at its top.
    if (arrived && arrived !== room && !wanted.value) title.current?.focus({ preventScroll: true })
    arrived = room
  }, [])
  useSignalEffect(() => {
    if (wanted.value) toField(wanted.value, TRIES)
  })
  return (
    <div class={`place place-${room}`}>
      <h1 ref={title} class="aside" tabIndex={-1}>
        {name}
      </h1>
      {children}
    </div>
  )
}

/** A picture that is drawn a moment later makes the page long enough only then. */
function toOldPlace(top: number, tries: number): void {
  scrollTo({ top, behavior: 'instant' })
  if (tries > 0 && Math.abs(scrollY - top) > 1) requestAnimationFrame(() => toOldPlace(top, tries - 1))
}

// Frames to wait for what is drawn a moment later.
const TRIES = 20

function toField(path: string, tries: number): void {
  requestAnimationFrame(() => {
    const row = document.getElementById(path)
    const value = row?.querySelector<HTMLElement>('.value input, .value select')
    if (!value) return tries > 0 ? toField(path, tries - 1) : void (wanted.value = '')
    value.focus({ preventScroll: true })
    value.closest('.value')!.scrollIntoView({ block: 'center' })
    wanted.value = ''
  })
}
