import type { PlaceName } from '../../store/place.ts'

/** One drawing for each place, 30 by 21, in the colour of its words. */
const DRAWN: Record<PlaceName, string> = {
  bike: 'M11 15a4 4 0 1 1-8 0a4 4 0 0 1 8 0M27 15a4 4 0 1 1-8 0a4 4 0 0 1 8 0M7 15l5-7h7l4 7M12 8l-4-2H4M19 8l3-5h-3M10.500 11.500h6',
  front: 'M12 1v9M18 1v9M9 4h12M10.500 10h3v6h-3zM16.500 10h3v6h-3zM12 16v3.500M18 16v3.500',
  rear: 'M10 2h10M10 18h10M10 6l10-2M10 10l10-2M10 14l10-2M15 18v2',
  check: 'M3 4h24v9h-24zM8 4v4M13 4v5M18 4v4M23 4v5M15 13v3M12.500 18a2.500 2.500 0 1 0 5 0a2.500 2.500 0 1 0-5 0',
  card: 'M8 2h14v17h-14zM11 6h8M11 10h8M11 14h5',
}

export function Icon({ of }: { of: PlaceName }) {
  return (
    <svg class="icon" width="30" height="21" viewBox="0 0 30 21" aria-hidden="true">
      <path d={DRAWN[of]} />
    </svg>
  )
}
