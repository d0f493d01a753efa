import { signal } from '@preact/signals'
import { useEffect } from 'preact/hooks'
import { canRedo, canUndo, redo, undo } from '../../store/history.ts'
import { job, slot } from '../../store/index.ts'
import { Start } from '../start/Start.tsx'
import { JobSheet } from './JobSheet.tsx'
import './top.css'

/** What is let down under the bar: two questions for a new job, or what can be done with this one. */
const shown = signal<'' | 'start' | 'job'>('')
const close = () => (shown.value = '')

/** Whose job this is, and the way to another. */
export function Top() {
  const { name, invented } = job.value
  return (
    <header class="top">
      <p class="job-name">{name || 'Your job'}</p>
      <p class="quiet job-kind">{invented ? 'demo, invented' : job.value.date}</p>
      <div class="top-links">
        {canUndo.value && (
          <button type="button" class="link" onClick={() => void undo()}>
            Undo
          </button>
        )}
        {canRedo.value && (
          <button type="button" class="link" onClick={() => void redo()}>
            Redo
          </button>
        )}
        {slot.value === 'demo' && <Toggle of="start">Start your own</Toggle>}
        <Toggle of="job">Job</Toggle>
      </div>
    </header>
  )
}

function Toggle({ of, children }: { of: 'start' | 'job'; children: string }) {
  const open = shown.value === of
  return (
    <button type="button" class="link" aria-expanded={open} aria-controls="sheet" onClick={() => (shown.value = open ? '' : of)}>
      {children} ›
    </button>
  )
}

/** In place under the bar, so that nothing is covered. */
export function Sheet() {
  const which = shown.value
  useEffect(() => {
    if (!which) return
    const sheet = document.getElementById('sheet')
    sheet?.scrollIntoView({ block: 'nearest' })
    sheet?.querySelector<HTMLElement>('h2')?.focus({ preventScroll: true })
  }, [which])
  return (
    <div id="sheet" onKeyDown={(event) => event.key === 'Escape' && close()}>
      {which === 'start' && <Start done={close} />}
      {which === 'job' && <JobSheet start={() => (shown.value = 'start')} done={close} />}
    </div>
  )
}
