/** The offer as it stands in the job file, and what the hand does to it. Numbers stay the text that was typed. */
import type { End } from '../core/report.ts'
import type { FieldPath } from '../generated/schema.ts'

type Typed = string | number | null

export interface OfferPart {
  what?: string
  count?: Typed
  price?: Typed
}

export interface OfferOption {
  name?: string
  note?: string
  setup?: { [end in End]?: Record<string, Typed> }
  parts?: OfferPart[]
  hours?: Typed
  /** Numbers of the complaints, from 1. */
  answers?: number[]
  adjusters?: string
  valving?: string
  service_hours?: Typed
  service_price?: Typed
  unknown?: string
}

export interface OfferDocument {
  currency?: string
  tax?: Typed
  tax_in_prices?: boolean | null
  hourly?: Typed
  note?: string
  complaints?: string[]
  options?: OfferOption[]
}

/** What the core takes; it refuses more by name. */
export const MOST = { options: 12, parts: 30, complaints: 12 }

export const optionsOf = (offer: OfferDocument | undefined): OfferOption[] => offer?.options ?? []

/** A list with one of its parts replaced, or taken out. */
export const replaced = <T>(list: readonly T[], at: number, next: T | undefined): T[] => list.flatMap((one, i) => (i !== at ? [one] : next === undefined ? [] : [next]))

export function withOption(offer: OfferDocument, at: number, said: Partial<OfferOption>): OfferDocument {
  const options = optionsOf(offer)
  return { ...offer, options: replaced(options, at, { ...options[at], ...said }) }
}

export function withPart(offer: OfferDocument, at: number, part: number, said: OfferPart | undefined): OfferDocument {
  const parts = optionsOf(offer)[at]?.parts ?? []
  return withOption(offer, at, { parts: replaced(parts, part, said && { ...parts[part], ...said }) })
}

/** An option more: the copy of one, right behind it, or a new one at the end. */
export function withNewOption(offer: OfferDocument, option: OfferOption, after = optionsOf(offer).length - 1): OfferDocument {
  const options = optionsOf(offer)
  return { ...offer, options: [...options.slice(0, after + 1), structuredClone(option), ...options.slice(after + 1)] }
}

export const withoutOption = (offer: OfferDocument, at: number): OfferDocument => ({ ...offer, options: replaced(optionsOf(offer), at, undefined) })

/** A complaint less: what answers one behind it answers it by its new number. */
export function withoutComplaint(offer: OfferDocument, at: number): OfferDocument {
  const moved = (answer: number) => (answer > at + 1 ? [answer - 1] : answer === at + 1 ? [] : [answer])
  const options = optionsOf(offer).map((one) => (one.answers ? { ...one, answers: one.answers.flatMap(moved) } : one))
  return { ...offer, complaints: replaced(offer.complaints ?? [], at, undefined), options }
}

export function ticked(answers: number[] | undefined, number: number, on: boolean): number[] {
  const others = (answers ?? []).filter((one) => one !== number)
  return on ? [...others, number].sort((a, b) => a - b) : others
}

/** A setup's entries by their key in the offer: what is built, without its "built_". */
export const setupOf = (entries: [path: FieldPath, text: string][]): Record<string, string> => Object.fromEntries(entries.map(([path, text]) => [path.replace(/^\w+\.built_/, ''), text]))
