/** What an option's setup can be taken from: the answer, what is built, tried or as found, a spring on offer. */
import type { End, FoundSetup, Setup } from '../../core/report.ts'
import type { FieldPath } from '../../generated/schema.ts'
import { entryOf, textOf } from '../../store/fields.ts'
import { reports } from '../../store/index.ts'
import { sized } from '../../store/looked.ts'
import { type OfferOption, setupOf } from '../../store/offer.ts'
import { schema } from '../../store/schema.ts'
import { exists } from '../field/Field.tsx'
import { number, stepOf, withUnit } from '../figure/text.ts'
import { entries } from '../pair/build.ts'

interface Source {
  name: string
  entries: Record<string, string>
}

const ENDS: End[] = ['front', 'rear']

export function sourcesOf(end: End): Source[] {
  const report = sized(reports[end].value.report)
  const stays = { name: 'Stays as it came in', entries: {} }
  if (!report) return [stays]
  const { tried, as_found: found, candidates } = report
  const known: [name: string, setup: Setup | null | undefined][] = [
    ['The answer', report.state === 'ok' ? report.chosen : null],
    ['What is tried', tried?.setup],
    ...candidates.filter(({ relation }) => relation !== 'chosen').map((one): [string, Setup] => ['On offer', one]),
  ]
  const built = builtTexts(end)
  return [
    ...known.flatMap(([name, setup]) => (setup ? [{ name: `${name}: ${inShort(end, setup)}`, entries: setupOf(entries(end, setup)) }] : [])),
    ...(Object.keys(built).length > 0 ? [{ name: 'As built', entries: built }] : []),
    ...(found.setup ? [{ name: `As found: ${inShort(end, found.setup)}`, entries: foundTexts(end, found.setup) }] : []),
    stays,
  ]
}

const inShort = (end: End, setup: Setup): string =>
  [withUnit({ ...stepOf(setup), plus_minus_text: '' }), !setup.pressure && `${number(setup.preload)} mm preload`, end === 'front' && setup.gap && `gap ${number(setup.gap)}`].filter(Boolean).join(', ')

/** As found each leg has its own gap. */
function foundTexts(end: End, setup: FoundSetup): Record<string, string> {
  const made = setupOf(entries(end, setup))
  if (end === 'rear' || !setup.gap_left || !setup.gap_right) return made
  return { ...made, gap_left: `${number(setup.gap_left)} mm`, gap_right: `${number(setup.gap_right)} mm` }
}

const paths = (end: End): FieldPath[] => (Object.keys(schema.fields) as FieldPath[]).filter((path) => path.startsWith(`${end}.built_`))

const builtTexts = (end: End): Record<string, string> =>
  setupOf(paths(end).flatMap((path): [FieldPath, string][] => (entryOf(path) ? [[path, textOf(path)]] : [])))

/** Those that apply to this kind of fork or shock; the right leg's spring only where it is another one. */
export function pathsOf(end: End, entered: object): FieldPath[] {
  const unlike = 'rate_right' in entered || textOf('front.spring_kind') === 'unequal'
  return paths(end).filter((path) => exists(path) && (unlike || path !== 'front.built_rate_right'))
}

/** A new option: the answer of both ends, as it stands, in sight and to be typed over. */
export function answered(): OfferOption {
  const setup: OfferOption['setup'] = {}
  for (const end of ENDS) {
    const report = reports[end].value.report
    if (report?.state === 'ok') setup[end] = setupOf(entries(end, report.chosen))
  }
  return { name: '', setup, parts: [], hours: '' }
}
