import { expect, it } from 'vitest'
import { nowAndNext, spell } from './next'

const entry = (what: string, start: string, finish: string) => ({ what, start, finish, lasts: '1 h' })
const at = (day: number, date: string, start: string, finish: string) => ({
  day, start: `${date}T${start}:00+01:00`, finish: `${date}T${finish}:00+01:00`,
})
const view = {
  plan: {
    timetable: [
      at(1, '2027-04-24', '09:00', '09:30'), at(1, '2027-04-24', '09:30', '12:30'), at(1, '2027-04-24', '13:15', '16:00'),
      at(2, '2027-04-25', '09:00', '12:00'),
    ],
  },
  written: {
    days: [
      { number: 1, date: 'Sat 24 April', entries: [entry('Welcome', '09:00', '09:30'), entry('Dig', '09:30', '12:30'), entry('Footing', '13:15', '16:00')] },
      { number: 2, date: 'Sun 25 April', entries: [entry('First lift', '09:00', '12:00')] },
    ],
  },
}

it.each([
  ['2027-04-01', '08:00', undefined, 'Welcome', 'day 1, Sat 24 April'],
  ['2027-04-24', '07:00', undefined, 'Welcome', 'in 2 h'],
  ['2027-04-24', '09:00', 'Welcome', 'Dig', 'in 30 min'],
  ['2027-04-24', '09:30', 'Dig', 'Footing', 'in 3 h 45 min'],
  ['2027-04-24', '12:45', undefined, 'Footing', 'in 30 min'],
  ['2027-04-24', '16:00', undefined, 'First lift', 'day 2, Sun 25 April'],
  ['2027-04-25', '11:59', 'First lift', undefined, ''],
  ['2027-05-01', '09:00', undefined, undefined, ''],
])('on %s at %s', (date, time, now, next, when) => {
  const found = nowAndNext(view, { date, time })
  expect([found.now?.what, found.next?.what, found.when]).toEqual([now, next, when])
})

it('spells minutes', () => {
  expect([spell(0), spell(60), spell(85)]).toEqual(['0 min', '1 h', '1 h 25 min'])
})
