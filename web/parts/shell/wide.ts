import { signal } from '@preact/signals'

/** Room for three columns: then what is folded on a phone for want of room stands open. */
const query = matchMedia('(width >= 1240px)')
export const wide = signal(query.matches)
query.addEventListener('change', () => (wide.value = query.matches))
