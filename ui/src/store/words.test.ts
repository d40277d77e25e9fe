import { expect, it } from 'vitest'
import type { BookedCourse, KitStore, Lot } from '../bindings'
import { about, courseState, isAsked, standing } from './words'

it('says what a lot is, and nothing of what is plain', () => {
  const spade: Lot = { item: 'Spade', unit: '', owner: '', good: 1, care: 0, broken: 0, mass: '', note: '' }
  expect(about(spade)).toBe('')
  expect(about({ ...spade, owner: 'Club', unit: 'pair', mass: '1.6 kg', note: 'new handle' })).toBe(
    'of Club; counted in pairs; 1.6 kg each; new handle',
  )
})

it('counts for a tool of its name, in any size and any capitals', () => {
  const names = ['Walling hammer', 'Working gloves']
  expect(isAsked('walling hammer ', names)).toBe(true)
  expect(isAsked('Working gloves, size 9', names)).toBe(true)
  expect(isAsked('Hammer', names)).toBe(false)
})

it('says how the course stands with the store', () => {
  const mine: BookedCourse = { title: 'Mine', file: 'm', days: '', items: 1, home: '', this: true }
  const store = (more: Partial<KitStore>) => ({ stands: 'open', booked: [], courses: [], ...more }) as unknown as KitStore
  expect(standing(store({}))).toContain('Nothing is booked')
  expect(standing(store({ stands: 'booked', booked: [{ item: 'Spade', count: 4 }] }))).toMatch(/^1 thing is booked/)
  expect(standing(store({ stands: 'home', courses: [{ ...mine, home: '2027-04-25' }] }))).toContain('2027-04-25')
  expect(courseState(mine)).toBe('booked')
})
