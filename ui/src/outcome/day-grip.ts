// From a pointer or a key to a day and a quarter of an hour of it. Which there are comes from Rust.
import type { DayEntry, DayPlaces } from '../bindings'
import { nearest, type Place, within } from '../common/pixels'

/** A day, counted from 0, and the place of a quarter among its own. */
export type Aim = { day: number; at: number }

const placesOf = (day?: DayPlaces) => day?.times.map((it) => it.place) ?? []
const middle = (day?: DayPlaces) => (day ? (day.top + day.bottom) / 2 : 0)

/** Where an entry is, to the nearest quarter. */
export const aimOf = (entry: DayEntry, days: readonly DayPlaces[]): Aim => ({
  day: entry.day,
  at: nearest(placesOf(days[entry.day]), entry.from),
})

/** Where an entry is dragged to, by so many millimetres of the drawing. A break keeps its day. */
export function aimedAt(entry: DayEntry, days: readonly DayPlaces[], by: Place): Aim {
  const day = entry.lesson === null ? entry.day : nearest(days.map(middle), middle(days[entry.day]) + by[1])
  return { day, at: nearest(placesOf(days[day]), entry.from + by[0]) }
}

/** The quarters that keys lead on by: one, or an hour. */
const QUARTERS: Record<string, number> = { ArrowRight: 1, ArrowLeft: -1, PageUp: 4, PageDown: -4 }
const DAYS: Record<string, number> = { ArrowDown: 1, ArrowUp: -1 }

/** Where a key leads to from an aim; nothing for a key that moves no entry. */
export function steppedTo(key: string, { day, at }: Aim, entry: DayEntry, days: readonly DayPlaces[]): Aim | undefined {
  const last = placesOf(days[day]).length - 1
  if (key === 'Home') return { day, at: 0 }
  if (key === 'End') return { day, at: last }
  const quarters = QUARTERS[key]
  if (quarters !== undefined) return { day, at: within(at + quarters, last) }
  const by = DAYS[key]
  if (by === undefined) return undefined
  const to = entry.lesson === null ? day : within(day + by, days.length - 1)
  // The same time of that day, as near as it has it.
  return { day: to, at: nearest(placesOf(days[to]), days[day]?.times[at]?.place ?? 0) }
}

/** `Day 2, 10:30`. */
export const aimWords = ({ day, at }: Aim, days: readonly DayPlaces[]) =>
  [days[day]?.name, days[day]?.times[at]?.words].filter(Boolean).join(', ')
