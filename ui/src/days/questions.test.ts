import { expect, it } from 'vitest'
import { breaksOf, pause } from './questions'

it('finds the breaks of a day in order, past the ninth', () => {
  const values = Object.fromEntries(
    [10, 2, 0].map((at) => [`day.1.breaks.${at}.start`, '11:00']).concat([['day.0.breaks.5.name', 'Tea'], ['day.1.start', '09:00']]),
  )
  expect(breaksOf(values, 1)).toEqual([0, 2, 10])
  expect(breaksOf(values, 0)).toEqual([5])
  expect(breaksOf(values, 2)).toEqual([])
})

it('asks for a break by its place in the file', () => {
  expect(pause(1, 2).map((it) => it.key)).toEqual([
    'day.1.breaks.2.name', 'day.1.breaks.2.start', 'day.1.breaks.2.minutes',
  ])
})
