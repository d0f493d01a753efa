/** Light, dark or sun; auto follows the device. Kept on this device. */
import { effect, signal } from '@preact/signals'

export const THEMES = { auto: 'Auto', light: 'Light', dark: 'Dark', sun: 'Sun' } as const
export type Theme = keyof typeof THEMES

const KEY = 'stanchion-theme'

function kept(): Theme {
  try {
    const found = localStorage.getItem(KEY)
    return found && found in THEMES ? (found as Theme) : 'auto'
  } catch {
    return 'auto' // Storage is switched off: the choice lasts as long as the page.
  }
}

export const theme = signal<Theme>(kept())

effect(() => {
  document.documentElement.dataset.theme = theme.value
  try {
    localStorage.setItem(KEY, theme.value)
  } catch {
    // As above.
  }
})
