import { expect, it } from 'vitest'
import { countedBy, countOf, isOpen, remarks } from './lines'

it('is open while short or never counted', () => {
  expect(isOpen({ have: '', short: '' })).toBe(true)
  expect(isOpen({ have: '4', short: '1' })).toBe(true)
  expect(isOpen({ have: '5', short: '' })).toBe(false)
})

it('is counted under its own name', () => {
  expect(countOf({ item: 'Walling hammer', have: '' }, {}).key).toBe('kit.on_hand.Walling hammer')
})

it('holds what the store counts until a count is typed for this course', () => {
  const spade = { item: 'Spade', have: '4' }
  const typed = { 'kit.on_hand.Spade': '4' }
  expect(countOf(spade, {}).unset).toBe('4')
  expect(countedBy(spade, {})).toBe('in the store')
  expect(countOf(spade, typed).unset).toBeUndefined()
  expect(countedBy(spade, typed)).toBe('typed here')
  expect(countedBy({ item: 'Spade', have: '' }, {})).toBe('')
})

it('says only what there is to say', () => {
  expect(remarks({ state: '', owners: '', prepare: '' })).toEqual([])
  expect(remarks({ state: '1 broken', owners: 'Upper Dale Club', prepare: 'sharpen it' })).toEqual([
    'Of those held: 1 broken.', 'From Upper Dale Club.', 'Before the course: sharpen it.',
  ])
})
