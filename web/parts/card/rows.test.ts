import { expect, test } from 'vitest'
import { sharedCase } from './rows.ts'

test('two cases are told once where they agree and apart where they differ', () => {
  expect(sharedCase('bike alone, n 1, along the leg', 'bike alone, n 1, vertical at the axle')).toEqual({
    shared: 'bike alone, n 1',
    front: 'along the leg',
    rear: 'vertical at the axle',
  })
  expect(sharedCase('per leg', 'per shock')).toEqual({ shared: '', front: 'per leg', rear: 'per shock' })
})
