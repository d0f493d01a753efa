/** The core's report (calc/report), as the page reads it. */
import type { FieldPath, Origin, Use } from '../generated/schema.ts'

export type End = 'front' | 'rear'

/** A worked-out figure. plus_minus_95 is null where no band was worked out: then none is shown. */
export interface Quantity {
  value: number
  unit: string
  case: string
  origin: string
  plus_minus_95: number | null
  decimals: number
}

export interface Problem {
  path: FieldPath | ''
  code: string
  message: string
  limit: string
  readings: string[]
  way_out: string
  end: End | 'both'
}

export interface Usual {
  low: number
  high: number
  typical: number
  unit: string
  confidence: string
}

export interface FieldState {
  applies: boolean
  entered: boolean
  /** As typed. */
  text: string
  /** In `unit`, the unit it was entered in; a choice's key for a choice. */
  value: number | string | null
  rates: number[]
  unit: string
  plus_minus_95: number | null
  origin: Origin | null
  reason: string
  note: string
  usual: Usual | null
  problem: Problem | null
}

/** What is built and what it does. Rate, preload and gap are per leg or shock, the rest per end. */
export interface Setup {
  rate: Quantity
  /** How an air spring is set: by this pressure candidates differ, not by the rate. The others are null where they stay as found. */
  pressure?: Quantity | null
  air_oil?: Quantity | null
  second_pressure?: Quantity | null
  preload: Quantity
  gap?: Quantity | null
  free_sag: Quantity
  free_sag_friction: Quantity
  topped_out: boolean
  rider_sag: Quantity
  rider_sag_friction: Quantity
  frequency: Quantity
  wheel_rate: Quantity
  end_force: Quantity
  end_multiple: Quantity
  landing_energy: Quantity
  energy_per_mass: Quantity
  bind_clearance: Quantity | null
  second_bind_clearance: Quantity | null
  /** Unequal legs: the rate of each, of which `rate` is the mean. */
  pair: { left: Quantity; right: Quantity } | null
}

export interface FoundSetup extends Setup {
  gap_left?: Quantity | null
  gap_right?: Quantity | null
}

export interface Candidate extends Setup {
  vetoes: { code: string; words: string; way_out: string }[]
  key: number
  relation: 'chosen' | 'one step softer' | 'one step stiffer' | 'other'
  fitted: boolean
  gap_other: Quantity | null
  oil: { left: Quantity; right: Quantity } | null
}

/** Wheel force of the whole end [kN] and wheel rate [N/mm] over the stroke; all lists are of one length. */
export interface Curve {
  axis: string
  unit: string
  force_unit: string
  stroke: number[]
  springs: number[]
  slow: number[]
  working: number[]
  fast: number[]
  /** The working line with the bump rubber; null where none is counted. */
  rubber: number[] | null
  wheel_rate: number[]
}

/** A part of a leg as it stands hanging: mm under the rim, diameters in mm. One that moves stands higher by the stroke. */
export interface LegPart {
  name: string
  top: number
  bottom: number
  outside: number
  inside: number
  moves: boolean
  /** What of it no reading tells: length, width, wall, bore. */
  assumed: string[]
}

/** A gas space along the stroke: mm under the rim, ml, bar gauge. Over the oil, its bottom is the oil's level. */
export interface LegSpace {
  name: string
  top: number[]
  bottom: number[]
  volume: number[] | null
  pressure: number[]
}

/** A spring along the stroke: mm under the rim; wire and mean diameter in mm. */
export interface LegSpring {
  name: string
  top: number[]
  bottom: number[]
  wire: number
  mean: number
  coils: number
  assumed: string[]
}

/** One leg: its gap in mm, its gas over the oil first, force along the leg in N. */
export interface DrawnLeg {
  side: string
  gap: number
  parts: LegPart[]
  spaces: LegSpace[]
  springs: LegSpring[]
  spring_force: number[]
  gas_force: number[]
}

/** What happens from a stroke on, or would beyond full travel; `bad` must not happen in use. */
export interface LegEvent {
  kind: string
  stroke: number
  words: string
  bad: boolean
}

/** The fork in section along its stroke; one leg where both are alike. */
export interface Section {
  kind: string
  layout: string
  travel: number
  stroke: number[]
  gap_words: string
  pace: string
  legs: DrawnLeg[]
  events: LegEvent[]
}

export interface Window {
  low: number
  high: number
  unit: string
  confidence?: string
}

/** Of the setup that an end's report chooses: all that the result strip shows, ahead of that report. Travel in mm, where sag is read. */
export interface Figures {
  setup: Setup
  travel: number
  windows: Windows
}

interface Windows {
  free_sag: Window
  rider_sag: Window
  frequency: Window
  end_multiple: Window
}

/** The draws counted; null until they are worked out. */
export interface Sure {
  draws: number
  left_out: number
  undecided: number
  /** `rate` is a pressure in bar where candidates differ by it. */
  counts: { rate: number; count: number; of_ten: number }[]
  /** False where the readings leave the rate open: then `low` to `high` is told, never one rate alone. */
  settled: boolean
  low: number
  high: number
  words: string
}

export interface NextReading {
  path: FieldPath
  result: string
  share: number
  now: number
  then: number
  unit: string
  words: string
  how: string
}

/** What every sized end holds, whether or not a spring meets the targets. */
interface Sized {
  problems: Problem[]
  candidates: Candidate[]
  standard: Setup
  as_found: { problem: Problem | null; setup: FoundSetup | null }
  windows: Windows
  targets: { rider_sag: Quantity; free_sag?: Quantity; end?: Quantity & { kind: string }; frequency?: Quantity }
  load: { alone: Quantity; aboard: Quantity; sprung_mass: Quantity }
  tried: Attempt | null
  /** What was built, and under the job's other conditions once these are worked out; null while nothing is entered. */
  built: (Attempt & { elsewhere: Place[] }) | null
  /** Of the chosen setup; as found where nothing was chosen. */
  curve: Curve | null
  curve_found: Curve | null
  curve_standard: Curve
  /** The fork that the curve is of; the front's only. */
  section: Section | null
  sure: Sure | null
  measure_next: NextReading[]
  /** What is built, under the job's other conditions; empty until it has been worked out. */
  elsewhere: Place[]
  /** Brake dive, where the job asks for it; the front's only. */
  braking: BrakeDive | null
  /** How the shock follows the wheel; the rear's only. */
  motion: Motion | null
}

/** A setup entered by hand: its figures, or why it has none. */
interface Attempt {
  problem: Problem | null
  setup: Setup | null
  curve: Curve | null
  /** Of the front, even of a leg that locks: up to there. */
  section: Section | null
}

export type BrakeDive = { words: string } & (
  | { problem: Problem }
  | { problem: null; deceleration: Quantity; stroke: Quantity; added: Quantity; left: Quantity; load: Quantity; front_tyre: Quantity; rear_tyre: Quantity; left_out: string }
)

export interface Motion {
  known_from: 'leverage' | 'pairs' | 'table' | 'points'
  words: string
  left_out: string
  rows: { travel: Quantity; stroke: Quantity; leverage: Quantity }[]
  average: Quantity
  fall: Quantity
  fit: { scatter: Quantity; residuals: { travel: Quantity; off: Quantity }[] } | null
  /** Hanging, at rider sag, at full travel; empty where the points are not known. */
  views: LinkageView[]
}

/** Points in mm from the swingarm pivot, forward and up; bars join two of them. */
export interface LinkageView {
  at: string
  travel: Quantity
  shock_length: Quantity
  points: Record<string, [number, number]>
  bars: [string, string][]
}

/** A built setup under one condition. `problem` says why it cannot be; then it has no figures. */
export type Place = { key: string; label: string; words: string } & (
  | { problem: string }
  | {
      problem: null
      free_sag: Quantity
      rider_sag: Quantity
      frequency: Quantity
      end_force: Quantity
      end_multiple: Quantity
      topped_out: boolean
      acts_like: Quantity | null
      restoring: Quantity | null
      /** Against as built, on the same draws; null as built. */
      change: { rider_sag: Quantity; end_multiple: Quantity } | null
      /** Draws, of 200, that cannot be at this condition. */
      left_out: number
    }
)

export interface EndOk extends Sized {
  state: 'ok'
  chosen: Candidate
  /** What it raises the bike by against as found, rider aboard: at the wheel, and along the leg; null where that is not known. */
  moved: { height: Quantity; along: Quantity } | null
  leave: boolean
  answer: string
  why: string[]
  /** Comes with the bands. */
  /** What to do to spacer or collar. */
  seat: { words: string } | null
  holds_for: { low: number | null; high: number | null; unit: string; words: string } | null
}

/** Every spring on offer is barred. */
export interface EndNone extends Sized {
  state: 'none'
}

/** An entry is refused, or the bike is impossible. */
export interface EndRefused {
  state: 'refused'
  problems: Problem[]
}

export type EndReport = EndOk | EndNone | EndRefused

export interface Attitude {
  front_height: Quantity
  rear_height: Quantity
  clamp_shift: Quantity
  rake_change: Quantity | null
  words: string
}

export interface Report {
  format: 'stanchion-report'
  version: number
  header: { format: string; version: number; name: string; owner: string; date: string; invented: boolean; note: string }
  use: Use | ''
  use_label: string
  posture: string
  /** Those that apply, or hold an entry. */
  fields: Partial<Record<FieldPath, FieldState>>
  ends: Record<End, EndReport>
  assumed: Record<End, { assumed: number; of: number }>
  measure_first: { path: FieldPath; words: string; how: string }[]
  notes: string[]
  attitude: Attitude | null
  range_problems: Problem[]
  modifiers: { when: string; words: string }[]
  cautions: { key: string; title: string; words: string }[]
  reassembly: string[]
  first_ride: string[]
  left_out: string
}

/** A report of one end alone lacks the other, and what compares the two. */
export type Heard = Omit<Report, 'ends' | 'attitude'> & { ends: Partial<Report['ends']>; attitude?: Report['attitude'] }
