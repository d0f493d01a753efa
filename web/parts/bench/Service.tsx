import type { FieldPath } from '../../generated/schema.ts'
import { enter } from '../../store/actions.ts'
import { entryOf } from '../../store/fields.ts'
import { report } from '../../store/index.ts'
import { exists } from '../field/Field.tsx'

const METERS = ['hours', 'km'] as const
const NAMES = { front: 'Fork', rear: 'Shock' } as const
const PARTS = { front: 'fork', rear: 'shock' } as const

/** What is due, and one tap that says an end was serviced at this visit. */
export function Service() {
  const service = report.value?.service
  if (!service) return <p class="quiet">Enter what the meter shows and when each end was last serviced, and see when the next is due.</p>
  const meter = METERS.find((one) => exists(`service.now_${one}`))
  const now = meter && entryOf(`service.now_${meter}`)?.value
  const serviced = (end: 'front' | 'rear') => {
    const path = `service.${PARTS[end]}_last_${meter}` as FieldPath
    enter([[path, String(now)]], [path])
  }
  return (
    <>
      <div class="told" aria-live="polite" data-service={service.now ? 'now' : 'not read'}>
        {service.ends.map(({ end, words, left }) => (
          <p key={end} class={left && left.value < 0 ? 'attend' : ''}>
            {words}
          </p>
        ))}
      </div>
      {service.now && (
        <div class="button-row">
          {service.ends.map(({ end }) => (
            <button key={end} type="button" onClick={() => serviced(end)}>
              {NAMES[end]} serviced now
            </button>
          ))}
        </div>
      )}
      <p class="quiet">{service.note}</p>
    </>
  )
}
