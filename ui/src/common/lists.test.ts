import { expect, it } from 'vitest'
import { first, namesIn, rowsOf, withName } from './lists'

it('reads the names of a list, none of no list', () => {
  expect(namesIn('heat, rain')).toEqual(['heat', 'rain'])
  expect(namesIn(undefined)).toEqual([])
  expect(namesIn(' , heat')).toEqual(['heat'])
})

it('puts a name in once and takes it out', () => {
  expect(withName('heat', 'rain', true)).toBe('heat, rain')
  expect(withName('heat, rain', 'rain', true)).toBe('heat, rain')
  expect(withName('heat, rain', 'heat', false)).toBe('rain')
  expect(withName('heat', 'heat', false)).toBe('')
})

it('finds the rows of one list in order, past the ninth, and of no other', () => {
  const values = Object.fromEntries(
    [10, 2, 0].map((at) => [`day.1.rain.${at}.start`, '11:00']).concat([['day.0.rain.5.start', ''], ['day.1.start', '09:00']]),
  )
  expect(rowsOf(values, 'day.1.rain')).toEqual([0, 2, 10])
  expect(rowsOf(values, 'day')).toEqual([0, 1])
  expect(rowsOf(values, 'absence')).toEqual([])
})

it('cuts a long list and says how much is left', () => {
  expect(first([1, 2, 3], 2)).toEqual({ shown: [1, 2], more: 'and 1 more' })
  expect(first([1, 2], 2).more).toBe('')
})
