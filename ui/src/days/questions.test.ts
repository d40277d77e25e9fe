import { expect, it } from 'vitest'
import { breakWords, pause, spell, weather } from './questions'

it('asks for a break by its place in the file', () => {
  expect(pause(1, 2).map((it) => it.key)).toEqual([
    'day.1.breaks.2.name', 'day.1.breaks.2.start', 'day.1.breaks.2.minutes',
  ])
})

it('asks for weather and rain of a day by their keys', () => {
  expect(weather(1).map((it) => it.key)).toContain('day.1.weather.full_sun')
  expect(spell(0, 3).map((it) => it.key)).toEqual(['day.0.rain.3.start', 'day.0.rain.3.minutes'])
})

it('names the breaks of a day in a few words', () => {
  const values = { 'day.0.breaks.0.name': 'Tea', 'day.0.breaks.0.start': '11:00', 'day.0.breaks.1.start': '12:45' }
  expect(breakWords(values, 0, [0, 1], false)).toBe('Tea 11:00, Break 12:45')
  expect(breakWords(values, 0, [0, 1], true)).toBe('Tea 11:00 am, Break 12:45 pm')
  expect(breakWords(values, 1, [], false)).toBe('none')
})
