// An entry of the days goes to a day and a quarter of an hour that Rust offered.
import { describe, expect, it } from 'vitest'
import type { DayEntry, DayPlaces } from '../bindings'
import { crowded } from '../common/pixels'
import { aimedAt, aimOf, aimWords, steppedTo } from './day-grip'

/** From 9 to 11, an hour every 12 mm; the second day begins at half past nine. */
const times = (first: number) =>
  ['09:00', '09:15', '09:30', '09:45', '10:00', '10:15', '10:30', '10:45']
    .map((typed, at) => ({ typed, words: typed, place: 20 + 3 * at }))
    .slice(first)
const days: DayPlaces[] = [
  { name: 'Day 1', top: 10, bottom: 22, times: times(0) },
  { name: 'Day 2', top: 60, bottom: 72, times: times(2) },
]
const lesson: DayEntry = {
  id: 'hearting-0', name: 'Hearting', lesson: 'hearting', key: null, day: 0, from: 27, to: 30, typed: '09:35', words: '09:35',
}
const pause: DayEntry = { ...lesson, id: 'break-0-0', lesson: null, key: 'day.0.breaks.0.start' }

describe('a pointer', () => {
  it('leads to the nearest quarter', () => {
    expect(aimOf(lesson, days)).toEqual({ day: 0, at: 2 })
    expect(aimedAt(lesson, days, [6, 0])).toEqual({ day: 0, at: 4 })
    expect(aimedAt(lesson, days, [-100, 0])).toEqual({ day: 0, at: 0 })
  })

  it('takes a lesson to another day, and a break not', () => {
    expect(aimedAt(lesson, days, [6, 45])).toEqual({ day: 1, at: 2 })
    expect(aimedAt(pause, days, [6, 45])).toEqual({ day: 0, at: 4 })
  })
})

describe('a key', () => {
  const at = (day: number, at: number) => ({ day, at })

  it('leads a quarter or an hour on, or to the ends of the day', () => {
    for (const [key, to] of [
      ['ArrowRight', 3], ['ArrowLeft', 1], ['PageUp', 6], ['PageDown', 0], ['Home', 0], ['End', 7],
    ] as const) expect(steppedTo(key, at(0, 2), lesson, days), key).toEqual(at(0, to))
    expect(steppedTo('Tab', at(0, 2), lesson, days)).toBeUndefined()
  })

  it('takes a lesson to the same time of another day, and a break not', () => {
    expect(steppedTo('ArrowDown', at(0, 4), lesson, days)).toEqual(at(1, 2))
    expect(steppedTo('ArrowDown', at(1, 2), lesson, days)).toEqual(at(1, 2))
    expect(steppedTo('ArrowUp', at(1, 0), lesson, days)).toEqual(at(0, 2))
    expect(steppedTo('ArrowDown', at(0, 4), pause, days)).toEqual(at(0, 4))
  })

  it('says where it leads', () => expect(aimWords(at(1, 2), days)).toBe('Day 2, 10:00'))
})

describe('entries too near each other for a finger', () => {
  const entry = (id: string, day: number, from: number, to: number): DayEntry => ({ ...lesson, id, day, from, to })

  it('are taken hold of in turn on their row and below it', () => {
    const [short, next, third] = [entry('a', 0, 20, 23), entry('b', 0, 23, 26), entry('c', 0, 26, 29)]
    expect([...crowded([third, short, next], 5)]).toEqual(['b'])
  })

  it('are none where each is long enough, or of another day', () => {
    expect(crowded([entry('a', 0, 20, 26), entry('b', 0, 26, 27), entry('c', 1, 26, 27)], 5).size).toBe(0)
  })
})
