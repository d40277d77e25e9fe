import { expect, it } from 'vitest'
import { counts } from './roster'

it('counts a named group by experience, with the empty ones', () => {
  const members = [{ experience: 'novice' }, { experience: 'experienced' }, { experience: 'novice' }]
  expect(counts(members)).toEqual([['Novices', 2], ['Improvers', 0], ['Experienced', 1]])
})
