import { canRedo, canUndo, redo, undo } from '../../store/history.ts'
import { job } from '../../store/index.ts'
import { address, place, PLACES, type PlaceName } from '../../store/place.ts'
import { Icon } from './icons.tsx'
import './shell.css'

export const NAMES: Record<PlaceName, string> = { bike: 'Bike', front: 'Front', rear: 'Rear', check: 'Check', card: 'Card' }

/** Which bike this is, and the way to the others. */
export function Header() {
  const { name, invented } = job.value
  return (
    <header class="head">
      <a class="head-back" href="#door">
        ‹ Jobs
      </a>
      <p class="job-name">
        {name || 'Bike without a name'}
        {invented && <span class="job-kind">, demo</span>}
      </p>
      <span class="head-tools">
        {canUndo.value && (
          <button type="button" onClick={() => void undo()}>
            Undo
          </button>
        )}
        {canRedo.value && (
          <button type="button" class="redo" onClick={() => void redo()}>
            Redo
          </button>
        )}
      </span>
    </header>
  )
}

/** The five places: at the thumb on a phone, on top at a desk. */
export function Bar() {
  return (
    <nav class="bar" aria-label="Places">
      {PLACES.map((name) => (
        <a key={name} href={address(name)} aria-current={place.value === name ? 'page' : undefined}>
          <Icon of={name} />
          {NAMES[name]}
        </a>
      ))}
    </nav>
  )
}
