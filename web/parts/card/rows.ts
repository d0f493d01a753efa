/** The card's table: as found and as left, each row with the case that its figures hold for. */
import type { Candidate, End, EndReport, FoundSetup, Quantity, Setup } from '../../core/report.ts'
import { number, plusMinus, rateText } from '../figure/told.ts'
import type { Origin } from '../../generated/schema.ts'

export interface Cell {
  text: string
  band: string
  /** Of a reading; a worked-out figure has none and no line. */
  origin: Origin | null
}

export interface Row {
  name: string
  unit: string
  case: string
  found: Cell[]
  left: Cell[]
}

type OriginOf = (key: string) => Origin | null

/** Rows of one end; empty where nothing could be worked out. `originOf` tells where a field came from. */
export function cardRows(end: End, report: EndReport | null, originOf: OriginOf): Row[] {
  if (!report || report.state === 'refused') return []
  const found = report.as_found.setup
  const left = report.state === 'ok' ? report.chosen : null
  const any = left ?? found
  if (!any) return []
  const row = (name: string, unit: string, pick: (setup: Setup) => Quantity, origin: Origin | null = null): Row => ({
    name,
    unit,
    case: pick(any).case,
    found: found ? [cell(pick(found), origin)] : [],
    left: left ? [cell(pick(left), null)] : [],
  })
  return [
    ...airRows(found, left, originOf),
    ...(coilless(any)
      ? []
      : [
          row('Spring rate', 'N/mm', (setup) => setup.rate, originOf(`${end}.rate`)),
          row('Preload', 'mm', (setup) => setup.preload, originOf(`${end}.preload`)),
        ]),
    ...gapRows(found, left, originOf),
    row('Free sag', 'mm', (setup) => setup.free_sag),
    row('Rider sag', 'mm', (setup) => setup.rider_sag),
    row('Ride frequency', 'Hz', (setup) => setup.frequency),
    row('End force', 'kN', (setup) => setup.end_force),
    row('End multiple', '×', (setup) => setup.end_multiple),
  ]
}

/** A fork on air alone. */
const coilless = (setup: Setup) => Boolean(setup.pressure) && setup.rate.value === 0

/** How an air spring is set: its pressures as found and as left (what was not set stays), and what goes into its chamber. */
function airRows(found: FoundSetup | null, left: Candidate | null, originOf: OriginOf): Row[] {
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

function gapRows(found: FoundSetup | null, left: Candidate | null, originOf: OriginOf): Row[] {
  const gap = left?.gap ?? found?.gap
  if (!gap) return []
  const read = found?.gap_left && found.gap_right ? [cell(found.gap_left, originOf('front.gap_left')), cell(found.gap_right, originOf('front.gap_right'))] : []
  const oil = left?.oil
  return [
    { name: 'Gap', unit: 'mm', case: gap.case, found: read, left: left?.gap ? [cell(left.gap, null)] : [] },
    ...(oil ? [{ name: 'Oil to add', unit: 'ml', case: 'left leg, right leg', found: [], left: [cell(oil.left, null), cell(oil.right, null)] }] : []),
  ]
}

function cell(of: Quantity, origin: Origin | null): Cell {
  return { text: of.unit === 'N/mm' ? rateText(of.value) : number(of), band: plusMinus(of), origin }
}

/** The parts that two cases share, and what only one of them says. */
export function sharedCase(front: string, rear: string): { shared: string; front: string; rear: string } {
  const [a, b] = [front.split(', '), rear.split(', ')]
  const only = (one: string[], other: string[]) => one.filter((part) => !other.includes(part)).join(', ')
  return { shared: a.filter((part) => b.includes(part)).join(', '), front: only(a, b), rear: only(b, a) }
}
