import { useEffect } from 'preact/hooks'
import type { Core } from './core/client.ts'
import { whole } from './look/whole.ts'
import type { Offline } from './offline/offline.ts'
import { Front } from './parts/front/Front.tsx'
import { Bar, Header } from './parts/shell/Header.tsx'
import { type Later, later } from './parts/shell/later.tsx'
import { News } from './parts/status/News.tsx'
import { Strip } from './parts/strip/Strip.tsx'
import { fetchHelp } from './store/help.ts'
import { isPlace, place, type PlaceName, type Room } from './store/place.ts'

/** Fetched when first needed, and ahead of that once the first screen stands; all are in the offline copy. */
const LATER: Record<Exclude<PlaceName, 'front'> | 'mybike', Later<object>> = {
  mybike: later(() => import('./parts/mybike/MyBike.tsx').then(({ MyBike }) => MyBike)),
  bike: later(() => import('./parts/bike/Bike.tsx').then(({ Bike }) => Bike)),
  rear: later(() => import('./parts/rear/Rear.tsx').then(({ Rear }) => Rear)),
  check: later(() => import('./parts/check/Check.tsx').then(({ Check }) => Check)),
  card: later(() => import('./parts/card/Card.tsx').then(({ Card }) => Card)),
}

/** Where the first skip link leads, in words; in a place, to its answer. */
const LEADS: Partial<Record<Room, string>> = { door: 'jobs', mybike: 'question' }

/** The place that the address names, between its header and the strip at the thumb. */
export function Page({ core, offline, Door }: { core: Core; offline: Offline; Door: Later<object> }) {
  const room = place.value
  const ready = whole.value && core.settled.value
  useEffect(() => {
    if (!ready) return
    fetchHelp()
    for (const part of [Door, ...Object.values(LATER)]) part.fetch()
  }, [ready])
  const Place = room === 'door' ? Door : room === 'front' ? Front : LATER[room]
  return (
    <div class={`page at-${room}`}>
      <nav class="skips" aria-label="Skip">
        <a href="#place">To the {LEADS[room] ?? 'answer'}</a>
        {isPlace(room) && room !== 'card' && <a href="#fields">To the fields</a>}
      </nav>
      {isPlace(room) && (
        <div class="top">
          <Header />
          <Bar />
          <Strip />
        </div>
      )}
      <main id="place" tabIndex={-1}>
        {room !== 'door' && <News core={core} offline={offline} />}
        <Place key={room} />
      </main>
    </div>
  )
}
