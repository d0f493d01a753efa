import { expect, test } from 'vitest'
import { groupsOf, textOfGroups } from './groups.ts'

test('a text becomes rows and the rows the text', () => {
  const rows = [
    ['3', '24', '0,15'],
    ['2', '20', '0.1 mm'],
  ]
  expect(groupsOf('3 24 0,15; 2 20 0.1 mm')).toEqual(rows)
  expect(textOfGroups(rows)).toBe('3 24 0,15; 2 20 0.1 mm')
})

test('an empty row is no group, and a half typed one stays', () => {
  expect(groupsOf(' ;\n')).toEqual([])
  expect(textOfGroups([['3', '24'], [], ['', '']])).toBe('3 24')
})
