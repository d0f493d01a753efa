import type { End } from '../../core/report.ts'
import { offer as keepOffer } from '../../store/actions.ts'
import { MOST, type OfferDocument, type OfferOption, ticked, withOption, withPart } from '../../store/offer.ts'
import { schema, unitsOf } from '../../store/schema.ts'
import { apart, together } from '../../store/text.ts'
import { exists } from '../field/Field.tsx'
import { Line, shown } from './Line.tsx'
import { pathsOf, sourcesOf } from './sources.ts'

type Entries = NonNullable<NonNullable<OfferOption['setup']>[End]>

interface Props {
  offer: OfferDocument
  option: OfferOption
  index: number
}

/** The entries of an option: its setup, parts and hours, and what is said of it. */
export function Edit({ offer, option, index }: Props) {
  const at = `offer.options[${index + 1}]`
  const set = (key: keyof OfferOption) => (text: string) => keepOffer(withOption(offer, index, { [key]: text }), `${index} ${key}`)
  const line = (key: 'name' | 'adjusters' | 'valving' | 'unknown' | 'note', label: string, kind: 'line' | 'text' = 'text') => (
    <Line path={`${at}.${key}`} label={label} kind={kind} value={shown(option[key])} write={set(key)} />
  )
  return (
    <div class="option-entries">
      {line('name', 'Name', 'line')}
      {line('note', 'What is done')}
      <Setup end="front" offer={offer} option={option} index={index} />
      <Setup end="rear" offer={offer} option={option} index={index} />
      <Parts offer={offer} option={option} index={index} />
      <Line path={`${at}.hours`} label="Work" kind="number" value={shown(option.hours)} write={set('hours')} unit="h" />
      <Answers offer={offer} option={option} index={index} />
      {line('adjusters', 'Adjusters')}
      {line('valving', 'Valving')}
      <Line path={`${at}.service_hours`} label="Service every" kind="number" value={shown(option.service_hours)} write={set('service_hours')} unit="h" />
      <Line path={`${at}.service_price`} label="A service costs" kind="number" value={shown(option.service_price)} write={set('service_price')} unit={offer.currency ?? ''} />
      {line('unknown', 'Not known')}
    </div>
  )
}

/** One end: taken from what is known of the bike, then typed over. */
function Setup({ end, offer, option, index }: Props & { end: End }) {
  const entered = option.setup?.[end] ?? {}
  const sources = sourcesOf(end)
  const put = (entries: Entries, step: string) => keepOffer(withOption(offer, index, { setup: { ...option.setup, [end]: entries } }), step)
  const take = (select: HTMLSelectElement) => {
    const found = sources.find(({ name }) => name === select.value)
    if (found) put(found.entries, '')
    select.value = ''
  }
  return (
    <fieldset class="option-setup">
      <legend>{end === 'front' ? 'Front' : 'Rear'}</legend>
      <div class="offer-line">
        <label for={`option-${index}-${end}`}>Take it from</label>
        <select id={`option-${index}-${end}`} value="" onChange={(event) => take(event.currentTarget)}>
          <option value="">Choose</option>
          {sources.map(({ name }) => (
            <option key={name} value={name}>
              {name}
            </option>
          ))}
        </select>
      </div>
      {end === 'front' && (entered.cartridge || exists('front.cartridge_state')) && <Cartridge entered={entered} id={`option-${index}-cartridge`} put={put} />}
      {pathsOf(end, entered).map((path) => {
        const field = schema.fields[path]
        const key = path.split('built_')[1]!
        const { number, unit } = apart(shown(entered[key]), unitsOf(field))
        const write = (text: string) => put({ ...entered, [key]: together(text, unit || field.unit) }, `${index} ${path}`)
        return (
          <Line
            key={path}
            path={`offer.options[${index + 1}].setup.${end}.${key}`}
            label={field.label.replace(' built', '')}
            kind="number"
            letters={field.low < 0}
            value={number}
            write={write}
            unit={unit || field.unit}
          />
        )
      })}
    </fieldset>
  )
}

const LEFT_AS: [state: string, words: string][] = [
  ['', 'As it came in'],
  ['as built', 'Shut, charged as built'],
  ['opened into one', 'Opened to the leg'],
]

/** How it leaves a sealed cartridge: its gap is then read around the shut one, or in the opened leg. */
function Cartridge({ entered, id, put }: { entered: Entries; id: string; put: (entries: Entries, step: string) => void }) {
  const { cartridge, ...others } = entered
  const write = (state: string) => put(state ? { ...others, cartridge: state } : others, '')
  return (
    <div class="offer-line">
      <label for={id}>Cartridge</label>
      <select id={id} value={shown(cartridge)} onChange={(event) => write(event.currentTarget.value)}>
        {LEFT_AS.map(([state, words]) => (
          <option key={state} value={state}>
            {words}
          </option>
        ))}
      </select>
    </div>
  )
}

function Parts({ offer, option, index }: Props) {
  const parts = option.parts ?? []
  return (
    <fieldset class="option-parts">
      <legend>Parts</legend>
      {parts.map((part, at) => {
        const path = `offer.options[${index + 1}].parts[${at + 1}]`
        const set = (key: 'what' | 'count' | 'price') => (text: string) => keepOffer(withPart(offer, index, at, { [key]: text }), `${index} part ${at} ${key}`)
        return (
          <div class="option-part" key={at} role="group" aria-label={`Part ${at + 1}`}>
            <Line path={`${path}.what`} label="What" value={shown(part.what)} write={set('what')} />
            <Line path={`${path}.count`} label="How many" kind="number" value={shown(part.count)} write={set('count')} />
            <Line path={`${path}.price`} label="Price each" kind="number" value={shown(part.price)} write={set('price')} unit={offer.currency ?? ''} />
            <button type="button" aria-label={`Remove part ${at + 1}`} onClick={() => keepOffer(withPart(offer, index, at, undefined), '')}>
              Remove
            </button>
          </div>
        )
      })}
      <button type="button" disabled={parts.length >= MOST.parts} onClick={() => keepOffer(withOption(offer, index, { parts: [...parts, { what: '', count: '1', price: '' }] }), '')}>
        Add a part
      </button>
    </fieldset>
  )
}

/** Which of the complaints it answers, in the tuner's judgement. */
function Answers({ offer, option, index }: Props) {
  const complaints = offer.complaints ?? []
  if (!complaints.some(Boolean)) return null
  return (
    <fieldset>
      <legend>Answers</legend>
      {complaints.map(
        (words, at) =>
          words && (
            <label class="option-tick" key={at}>
              <input
                type="checkbox"
                checked={option.answers?.includes(at + 1) ?? false}
                onChange={(event) => keepOffer(withOption(offer, index, { answers: ticked(option.answers, at + 1, event.currentTarget.checked) }), '')}
              />
              {words}
            </label>
          ),
      )}
    </fieldset>
  )
}
