/** The card's table: as found and as left, each row with the case that its figures hold for. */
import type { Candidate, End, EndReport, FoundSetup, Quantity, SagTold, Setup } from '../../core/report.ts'
import { number, plusMinus } from '../figure/text.ts'
import type { Origin } from '../../generated/schema.ts'

export interface Cell {
  text: string
  band: string
  /** Of a reading; a worked-out figure has none and no line. */
  origin: Origin | null
  /** A sag: that it was read, and that nothing rests on it. */
  word?: string
  note?: string
}

export interface Row {
  name: string
  unit: string
  case: string
  found: Cell[]
  left: Cell[]
}

/** What an end is left as: what was built, or the recommendation as a draft. */
export interface Left {
  setup: Setup
  built: boolean
  /** Over its column: never "as left" for what was only worked out. */
  head: 'as left' | 'draft'
  /** Each leg's own, where they were read back. */
  gaps?: [Quantity, Quantity] | undefined
  oil?: Candidate['oil']
}

type OriginOf = (key: string) => Origin | null

/** Rows of one end; empty where nothing could be worked out. `originOf` tells where a field came from, `as` what the end is left as, `told` the sags that were read. */
export function cardRows(end: End, report: EndReport | null, originOf: OriginOf, as: Left | null, told: SagTold[]): Row[] {
  if (!report || report.state === 'refused') return []
  const found = report.as_found.setup
  const left = as?.setup ?? null
  const any = left ?? found
  if (!any) return []
  const built = (key: string) => (as?.built ? originOf(`${end}.built_${key}`) : null)
  const row = (name: string, unit: string, pick: (setup: Setup) => Quantity, key = ''): Row => ({
    name,
    unit,
    case: pick(any).case,
    found: found ? [cell(pick(found), key ? originOf(`${end}.${key}`) : null)] : [],
    left: left ? [cell(pick(left), key ? built(key) : null)] : [],
  })
  // What was read with a tape stands for what would be worked out in its place.
  const sag = (name: string, pick: (setup: Setup) => Quantity): Row => {
    const read = (of: SagTold['of']) => told.filter((one) => one.axle === end && one.of === of && one.label === name.toLowerCase()).map(sagCell)
    const [found, built, one] = [read('found'), as?.built ? read('built') : [], row(name, 'mm', pick)]
    return { ...one, found: found.length > 0 ? found : one.found, left: built.length > 0 ? built : one.left }
  }
  return [
    ...airRows(found, left, originOf),
    ...(coilless(any)
      ? []
      : [
          row('Spring rate', 'N/mm', (setup) => setup.rate, 'rate'),
          row('Preload', 'mm', (setup) => setup.preload, 'preload'),
        ]),
    ...gapRows(found, left, originOf, as),
    sag('Free sag', (setup) => setup.free_sag),
    sag('Rider sag', (setup) => setup.rider_sag),
    row('Ride frequency', 'Hz', (setup) => setup.frequency),
    shortCase(row('Force at full travel', 'kN', (setup) => setup.end_force)),
    shortCase(row('Force at full travel over rider load', '×', (setup) => setup.end_multiple)),
  ]
}

/** The row's name says already what its case begins with. */
const shortCase = (row: Row): Row => ({ ...row, case: row.case.replace(/^(full travel|end force over static rider load), /, '') })

/** A fork on air alone. */
const coilless = (setup: Setup) => Boolean(setup.pressure) && setup.rate.value === 0

/** How an air spring is set: its pressures as found and as left (what was not set stays), and what goes into its chamber. */
function airRows(found: FoundSetup | null, left: Setup | null, originOf: OriginOf): Row[] {
  const kinds: [string, string, string, (setup: Setup) => Quantity | null | undefined][] = [
    ['Air pressure', 'bar', 'front.air_pressure', (setup) => setup.pressure],
    ['Second volume', 'bar', 'front.second_pressure', (setup) => setup.second_pressure],
    ['Oil or spacers', 'ml', '', (setup) => setup.air_oil],
  ]
  return kinds.flatMap(([name, unit, key, pick]) => {
    const origin = key ? originOf(key) : null
    const [was, set] = [found && pick(found), left && pick(left)]
    const any = set ?? was
    const before = was ? [cell(was, origin)] : []
    return any ? [{ name, unit, case: any.case.replace(`${name.toLowerCase()}, `, ''), found: before, left: set ? [cell(set, null)] : left ? before : [] }] : []
  })
}

function gapRows(found: FoundSetup | null, left: Setup | null, originOf: OriginOf, as: Left | null): Row[] {
  const gap = left?.gap ?? found?.gap
  if (!gap) return []
  const read = found?.gap_left && found.gap_right ? [cell(found.gap_left, originOf('front.gap_left')), cell(found.gap_right, originOf('front.gap_right'))] : []
  const legs = as?.gaps?.map((one, index) => cell(one, originOf(index === 0 ? 'front.built_gap_left' : 'front.built_gap_right')))
  const oil = as?.oil
  return [
    { name: 'Gap', unit: 'mm', case: gap.case, found: read, left: legs ?? (left?.gap ? [cell(left.gap, null)] : []) },
    ...(oil ? [{ name: 'Oil to add', unit: 'ml', case: 'left leg, right leg', found: [], left: [cell(oil.left, null), cell(oil.right, null)] }] : []),
  ]
}

function cell(of: Quantity, origin: Origin | null): Cell {
  return { text: number(of), band: plusMinus(of), origin }
}

const sagCell = ({ found, origin, word, left_out }: SagTold): Cell => ({ ...cell(found, origin as Origin), word, note: left_out })

/** The parts that two cases share, and what only one of them says. */
export function sharedCase(front: string, rear: string): { shared: string; front: string; rear: string } {
  const [a, b] = [front.split(', '), rear.split(', ')]
  const only = (one: string[], other: string[]) => one.filter((part) => !other.includes(part)).join(', ')
  return { shared: a.filter((part) => b.includes(part)).join(', '), front: only(a, b), rear: only(b, a) }
}
