import { expect, it } from 'vitest'
import { countOf, isOpen } from './lines'

it('is open while short or never counted', () => {
  expect(isOpen({ have: '', short: '' })).toBe(true)
  expect(isOpen({ have: '4', short: '1' })).toBe(true)
  expect(isOpen({ have: '5', short: '' })).toBe(false)
})

it('is counted under its own name', () => {
  expect(countOf({ item: 'Walling hammer' }).key).toBe('kit.on_hand.Walling hammer')
})
