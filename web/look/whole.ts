import { signal } from '@preact/signals'

/** Whether what is folded is drawn too, for the browser's search and for print: it waits for the first frame. */
export const whole = signal(false)

export function drawTheRest(): void {
  whole.value = true
}
