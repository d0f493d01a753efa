import type { OfferOption, OfferReport, OptionDone, Report } from '../../core/report.ts'
import { Bill } from './Bill.tsx'
import { saidOf } from './Option.tsx'
import { SideBySide } from './SideBySide.tsx'
import './offersheet.css'

const MOST_COLUMNS = 4
/** So many options have room for what each does in words; of more the tables tell it. */
const WORDED = 2

/** The offer as one printed page; drawn for paper only. */
export function OfferSheet({ report, offer }: { report: Report; offer: OfferReport }) {
  const { header, options, use_label } = report
  const full = offer.options.length <= WORDED
  return (
    <article class="offer-sheet paper" aria-label="Offer" data-columns={Math.min(offer.options.length, MOST_COLUMNS)}>
      <header>
        <h2>Offer: {header.name || 'bike without a name'}</h2>
        <p>
          {[header.owner, use_label, header.date].filter(Boolean).join(', ')}. {offer.invented && <b>{offer.invented}</b>}
        </p>
      </header>
      {offer.complaints.length > 0 && (
        <p>
          <b>Complaints</b> {offer.complaints.map((words, at) => `${at + 1} ${words}`).join('; ')}.
        </p>
      )}
      <div class="offer-columns">
        {offer.options.map((option) => (
          <Column key={option.number} option={option} full={full} done={options?.options.find(({ number }) => number === option.number)} />
        ))}
      </div>
      {options && <SideBySide told={options} />}
      {options && options.between.length > 0 && (
        <div class="offer-between">
          {options.between.map((pair) => (
            <p key={`${pair.one} ${pair.other}`}>
              {[...pair.words, pair.lead].join(' ')} {pair.differs.length > 0 && `${pair.differs.map((row) => row.label.replace(/^[A-Z]/, (letter) => letter.toLowerCase())).join(', ')}.`}
            </p>
          ))}
        </div>
      )}
      <p class="offer-small">
        {offer.tax} {offer.note} {options?.note}
      </p>
      <p class="offer-hand">
        Option <span class="blank" /> agreed on <span class="blank" /> customer <span class="blank long" /> for the shop <span class="blank long" />
      </p>
    </article>
  )
}

function Column({ option, done, full }: { option: OfferOption; done: OptionDone | undefined; full: boolean }) {
  return (
    <section>
      <h3>{option.title}</h3>
      {option.note && <p>{option.note}</p>}
      {done?.ends.map((end) => (
        <p key={end.axle}>{full || end.problem || end.stays ? end.words : `${end.axle === 'front' ? 'Front' : 'Rear'}: ${end.setup}.`}</p>
      ))}
      <Bill told={option} />
      <p class="offer-total">{option.bill ? option.bill.total : 'No total yet'}</p>
      {option.complaints && <p>{option.complaints}</p>}
      {saidOf(option).map(([label, words]) => (
        <p key={label}>
          <b>{label}</b> {words}
        </p>
      ))}
    </section>
  )
}
