import { expect, test } from 'vitest'
import { keyMoves, moveTo, strokeShown } from './useStroke.ts'

test('at first half of the stroke is shown, then where the hand has put it, never beyond what the leg can do', () => {
  expect(strokeShown(305)).toBe(153)
  moveTo(200, 300)
  expect(strokeShown(300)).toBe(200)
  expect(strokeShown(120)).toBe(120)
  moveTo(-5, 300)
  expect(strokeShown(300)).toBe(0)
  moveTo(999, 296.3)
  expect(strokeShown(296.3)).toBe(296.3)
})

test('arrow keys move by 5 mm, other keys are the slider’s own', () => {
  expect(keyMoves('ArrowUp', 150, 300)).toBe(true)
  expect(strokeShown(300)).toBe(155)
  keyMoves('ArrowLeft', 155, 300)
  expect(strokeShown(300)).toBe(150)
  expect(keyMoves('End', 150, 300)).toBe(false)
  expect(strokeShown(300)).toBe(150)
})
