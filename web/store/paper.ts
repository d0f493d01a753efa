/** What goes to paper from the place of the card. */
import { signal } from '@preact/signals'

export const onPaper = signal<'card' | 'offer'>('card')
