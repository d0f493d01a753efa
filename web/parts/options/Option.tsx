import { useSignal } from '@preact/signals'
import type { OfferOption as Told, OptionDone } from '../../core/report.ts'
import { offer as keepOffer } from '../../store/actions.ts'
import { MOST, type OfferDocument, type OfferOption, optionsOf, withNewOption } from '../../store/offer.ts'
import { Bill } from './Bill.tsx'
import { Edit } from './Edit.tsx'

interface Props {
  offer: OfferDocument
  option: OfferOption
  index: number
  told: Told | undefined
  done: OptionDone | undefined
  remove: () => void
}

/** What there is to say of an option beside its bill; an empty one is left out. */
export const saidOf = (told: Told): [label: string, words: string][] =>
  ([['Adjusters', told.adjusters], ['Valving', told.valving], ['Service', told.service], ['Not known', told.unknown]] as [string, string][]).filter(([, words]) => words)

/** One option: its price, what it does at both ends, what it answers; its entries fold out. */
export function Option({ offer, option, index, told, done, remove }: Props) {
  const open = useSignal(!option.name && !option.parts?.length)
  const title = told?.title ?? `Option ${index + 1}`
  return (
    <section class="option" data-option={index + 1} aria-label={title}>
      <h3>{title}</h3>
      <p class="option-total" aria-live="polite">
        {told?.bill ? <b>{told.bill.total}</b> : <span class="quiet">No total yet. {told?.waits.join(' ')}</span>}
      </p>
      {told?.note && <p>{told.note}</p>}
      {done?.ends.map((end) => (
        <p key={end.axle} class={end.problem ? 'attend' : ''} data-option-end={end.axle}>
          {end.words}
        </p>
      ))}
      {told && <Bill told={told} />}
      {told?.complaints && <p>{told.complaints}</p>}
      {told && (
        <dl>
          {saidOf(told).map(([label, words]) => (
            <div key={label}>
              <dt>{label}</dt>
              <dd>{words}</dd>
            </div>
          ))}
        </dl>
      )}
      <button type="button" class="link" aria-expanded={open.value} aria-controls={`option-${index}-entries`} onClick={() => (open.value = !open.value)}>
        {open.value ? 'Close its entries' : 'Change this option'} ›
      </button>
      <div id={`option-${index}-entries`} hidden={!open.value}>
        {open.value && <Edit offer={offer} option={option} index={index} />}
      </div>
      <div class="option-ways">
        <button type="button" disabled={optionsOf(offer).length >= MOST.options} onClick={() => keepOffer(withNewOption(offer, option, index), '')}>
          Copy it
        </button>
        <button type="button" onClick={remove}>
          Remove it
        </button>
      </div>
    </section>
  )
}
