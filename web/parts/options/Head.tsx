import { useSignal } from '@preact/signals'
import { offer as keepOffer } from '../../store/actions.ts'
import { report } from '../../store/index.ts'
import { MOST, type OfferDocument, replaced, withoutComplaint } from '../../store/offer.ts'
import { Line, shown } from './Line.tsx'

const TERMS: string[] = ['offer.currency', 'offer.hourly', 'offer.tax']

/** Currency, price of an hour, tax: what holds for all options. Folded where it was said before. */
export function Terms({ offer }: { offer: OfferDocument }) {
  const open = useSignal(!offer.currency)
  const set = (key: 'currency' | 'hourly' | 'tax' | 'note') => (text: string) => keepOffer({ ...offer, [key]: text }, key)
  const told = report.value?.offer
  const wrong = told?.problems.some(({ path }) => TERMS.includes(path))
  const said = [[offer.currency, offer.hourly && `${offer.hourly} an hour`].filter(Boolean).join(', '), told?.tax].filter(Boolean).join('. ')
  return (
    <details class="options-terms" open={open.value || wrong} onToggle={(event) => (open.value = event.currentTarget.open)}>
      <summary>Prices: {said || 'currency, hour, tax'}</summary>
      <Line path="offer.currency" label="Currency" value={shown(offer.currency)} write={set('currency')} />
      <Line path="offer.hourly" label="An hour of work" kind="number" value={shown(offer.hourly)} write={set('hourly')} unit={offer.currency ?? ''} />
      <Line path="offer.tax" label="Tax" kind="number" value={shown(offer.tax).replace(/\s*%$/, '')} write={set('tax')} unit="%" />
      <div class="offer-line" role="group" aria-label="Tax in the prices">
        <span>The prices</span>
        <span class="boxes">
          {([[true, 'include it'], [false, 'leave it out']] as const).map(([is, words]) => (
            <button key={words} type="button" class={offer.tax_in_prices === is ? 'on' : ''} aria-pressed={offer.tax_in_prices === is} onClick={() => keepOffer({ ...offer, tax_in_prices: is }, '')}>
              {words}
            </button>
          ))}
        </span>
      </div>
      <Line path="offer.note" label="For all of it" kind="text" value={shown(offer.note)} write={set('note')} />
    </details>
  )
}

/** What the customer complains of, in plain words, one after another. */
export function Complaints({ offer }: { offer: OfferDocument }) {
  const all = offer.complaints ?? []
  const open = useSignal(false)
  const count = all.filter(Boolean).length
  return (
    <details class="options-terms" open={open.value} onToggle={(event) => (open.value = event.currentTarget.open)}>
      <summary>Complaints: {count || 'none yet'}</summary>
      {all.map((words, at) => (
        <div class="offer-with" key={at}>
          <Line
            path={`offer.complaints[${at + 1}]`}
            label={`Complaint ${at + 1}`}
            kind="text"
            value={words}
            write={(text) => keepOffer({ ...offer, complaints: replaced(all, at, text) }, `complaint ${at}`)}
          />
          <button type="button" aria-label={`Remove complaint ${at + 1}`} onClick={() => keepOffer(withoutComplaint(offer, at), '')}>
            Remove
          </button>
        </div>
      ))}
      <button type="button" disabled={all.length >= MOST.complaints} onClick={() => keepOffer({ ...offer, complaints: [...all, ''] }, '')}>
        Add a complaint
      </button>
    </details>
  )
}
