import { expect, test } from 'vitest'
import { assumedWords, eventAt, legDescription, linesAt, spoken } from './words.ts'
import { leg, section } from './testing.ts'

const texts = (stroke: number) => linesAt(section, leg, stroke).map((line) => line.text)

test('oil and gas at a stroke, with the side of the pressure', () => {
  expect(texts(150)).toEqual(['oil 270 mm under the rim', 'gas 415 ml, 0.8 bar over outside'])
  expect(texts(0)[1]).toBe('gas 690 ml, 0.1 bar under outside')
  expect(texts(10)[1]).toMatch(/at outside pressure$/)
  expect(linesAt(section, leg, 0)[1]!.brief).toBe('gas 690 ml, −0.1 bar')
})

test('what happens here is told, and before it what must not happen', () => {
  expect(eventAt(section, 1)!.kind).toBe('topped out')
  expect(eventAt(section, 299)!.kind).toBe('full')
  expect(eventAt(section, 150)!.kind).toBe('coil bind')
  expect(eventAt({ ...section, events: section.events.filter((event) => !event.bad) }, 150)!.kind).toBe('oil lock')
  expect(eventAt({ ...section, events: [] }, 150)).toBeUndefined()
})

test('the slider says the same as the drawing', () => {
  expect(spoken(section, leg, 150, 1.9)).toBe('150 mm of stroke; 1.9 kN at the wheel; oil 270 mm under the rim; gas 415 ml, 0.8 bar over outside')
  expect(spoken(section, leg, 300, null)).toContain('Full travel at 300 mm.')
})

test('the description names the tubes the right way up, the parts and the stops', () => {
  expect(legDescription(section, leg)).toContain('the outer tube above')
  expect(legDescription({ ...section, layout: 'conventional' }, leg)).toContain('the inner tube above')
  for (const words of ['spring, cartridge, rod', 'Gap 120 mm, read collapsed', 'The coils touch at 284 mm']) expect(legDescription(section, leg)).toContain(words)
})

test('what is not measured is said', () => {
  expect(assumedWords(leg)).toBe(
    'Not measured, drawn as assumed: outer tube (length, wall); inner tube (length); cartridge (length, width); spring (wire). No figure rests on these.',
  )
  expect(assumedWords({ ...leg, parts: [], springs: [] })).toBe('')
})
