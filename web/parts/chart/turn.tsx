import { signal } from '@preact/signals'

/** All charts are turned together: they are read beside each other. */
export const turned = signal(false)

/** Stroke up beside the leg, or along the bottom for those who expect it there. */
export function TurnButton() {
  return (
    <button type="button" class="link" aria-pressed={turned.value} onClick={() => (turned.value = !turned.value)}>
      Turn the chart
    </button>
  )
}
