import { signal } from '@preact/signals'

/** Whether what lies below the first screen is drawn too: it waits for the first frame, so that the answer is seen sooner. */
export const whole = signal(false)

export function drawTheRest(): void {
  whole.value = true
}
