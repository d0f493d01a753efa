/** A made-up leg for tests: upside-down, 300 mm of stroke, round numbers. */
import type { DrawnLeg, LegPart, Section } from '../../core/report.ts'

const part = (name: string, top: number, bottom: number, outside: number, inside = 0, moves = false, assumed: string[] = []): LegPart => ({ name, top, bottom, outside, inside, moves, assumed })

export const leg: DrawnLeg = {
  side: 'each leg',
  gap: 120,
  parts: [
    part('outer tube', 0, 590, 57, 51, false, ['length', 'wall']),
    part('inner tube', 340, 900, 48, 43, true, ['length']),
    part('axle lug', 900, 945, 58, 0, true),
    part('cap', -15, 15, 51),
    part('cartridge', 490, 900, 31, 28, true, ['length', 'width']),
    part('rod', 15, 515, 12),
  ],
  spaces: [{ name: 'over the oil', top: [0, 0, 0], bottom: [410, 270, 120], volume: [690, 415, 145], pressure: [-0.06, 0.8, 6.3] }],
  springs: [{ name: 'spring', top: [25, 25, 25], bottom: [490, 340, 190], wire: 4.9, mean: 36, coils: 25, assumed: ['wire'] }],
  spring_force: [0, 700, 1400],
  gas_force: [0, 150, 1100],
}

export const section: Section = {
  kind: 'open',
  layout: 'upside-down',
  travel: 300,
  stroke: [0, 150, 300],
  gap_words: 'read collapsed, spring out',
  process: 'settled',
  legs: [leg],
  events: [
    { kind: 'topped out', stroke: 0, words: 'Topped out at 0 mm.', bad: false },
    { kind: 'coil bind', stroke: 284, words: 'The coils touch at 284 mm, before full travel.', bad: true },
    { kind: 'full', stroke: 300, words: 'Full travel at 300 mm.', bad: false },
    { kind: 'oil lock', stroke: 380, words: 'Would be oil-locked at 380 mm.', bad: false },
  ],
}
