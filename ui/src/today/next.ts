// What is on by the timetable and what comes next, by the clock on the wall.
import type { WallClock } from '../common/wall-clock'

export type Entry = { what: string; start: string; finish: string; lasts: string }

export type NowAndNext = {
  now?: Entry
  next?: Entry
  /** When the next thing is, as `in 25 min`, `tomorrow`, or a date. */
  when: string
}

type Seen = {
  plan: { timetable: readonly { day: number; start: string; finish: string }[] }
  written: { days: readonly { number: number; date: string; entries: readonly Entry[] }[] }
}

type Timed = Entry & { date: string; from: string; to: string; dayWords: string }

/** The entries of all days with the date and the times they have, as text that sorts. */
function timed({ plan, written }: Seen): Timed[] {
  return written.days.flatMap((day) => {
    const of = plan.timetable.filter((it) => it.day === day.number)
    return day.entries.flatMap((entry, at) => {
      const its = of[at]
      if (!its) return []
      return [{ ...entry, date: its.start.slice(0, 10), from: its.start.slice(11, 16), to: its.finish.slice(11, 16), dayWords: `day ${day.number}, ${day.date}` }]
    })
  })
}

export function nowAndNext(view: Seen, clock: WallClock): NowAndNext {
  const all = timed(view)
  const on = (it: Timed) => it.date === clock.date && it.from <= clock.time && clock.time < it.to
  const later = (it: Timed) => clock.date < it.date || (it.date === clock.date && clock.time < it.from)
  const now = all.find(on)
  const next = all.find(later)
  const when = next ? (next.date === clock.date ? `in ${spell(minutes(next.from) - minutes(clock.time))}` : next.dayWords) : ''
  return { ...(now && { now }), ...(next && { next }), when }
}

function minutes(time: string): number {
  const [hours = '0', rest = '0'] = time.split(':')
  return 60 * Number(hours) + Number(rest)
}

/** `25 min`, `1 h`, `1 h 25 min`. */
export function spell(all: number): string {
  const rest = all % 60
  const hours = (all - rest) / 60
  return [hours !== 0 && `${hours} h`, (rest !== 0 || hours === 0) && `${rest} min`].filter(Boolean).join(' ')
}
