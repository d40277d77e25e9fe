// The lessons of a course: when each is given, where it was moved to, whether it is left out.
import type { View } from '../bindings'
import { namesIn, rowsOf } from '../common/lists'

export type Lesson = {
  id: string
  title: string
  /** `day 1, 09:00, 30 min`, each time it is given. */
  given: string[]
  /** The number of the day it was moved to, as the file writes it; empty where it falls by itself. */
  day: string
  /** The time it was moved to; empty for first thing. */
  time: string
  leftOut: boolean
  /** Why this course teaches it, or why not. */
  why: string
}

type Seen = {
  values: Record<string, string>
  choices: Pick<View['choices'], 'lessons'>
  plan: { timetable: readonly Pick<View['plan']['timetable'][number], 'day' | 'lesson'>[] }
  written: { days: readonly { number: number; entries: readonly { start: string; lasts: string }[] }[] }
}

/** Lessons that are given, moved or left out, in the order they are taught; one this course has no use for is not among them. */
export function lessonsOf({ values, choices, plan, written }: Seen): Lesson[] {
  const out = namesIn(values['timetable.leave_out'])
  const wishes = rowsOf(values, 'wish').map((at) => ({
    lesson: values[`wish.${at}.lesson`],
    day: values[`wish.${at}.day`] ?? '',
    time: values[`wish.${at}.at`] ?? '',
  }))
  const given = (id: string) =>
    written.days.flatMap((day) => {
      const ids = plan.timetable.filter((it) => it.day === day.number).map((it) => it.lesson)
      return day.entries.filter((_, at) => ids[at] === id).map((it) => `day ${day.number}, ${it.start}, ${it.lasts}`)
    })
  const known = new Map(choices.lessons.map((it) => [it.id, it]))
  const inOrder = new Set([...plan.timetable.map((it) => it.lesson ?? ''), ...known.keys()])
  return [...inOrder]
    .flatMap((id) => known.get(id) ?? [])
    .map(({ id, title, why }) => {
      const wish = wishes.find((it) => it.lesson === id)
      return { id, title, why, given: given(id), day: wish?.day ?? '', time: wish?.time ?? '', leftOut: out.includes(id) }
    })
    .filter((it) => it.given.length !== 0 || it.day !== '' || it.leftOut)
}

/** How many of them were moved or left out, in words. */
export function lessonWords(lessons: readonly Pick<Lesson, 'day' | 'leftOut'>[]): string {
  const moved = lessons.filter((it) => it.day !== '' && !it.leftOut).length
  const out = lessons.filter((it) => it.leftOut).length
  const words = [moved !== 0 && `${moved} moved`, out !== 0 && `${out} left out`].filter(Boolean)
  return words.length === 0 ? 'each where it falls' : words.join(', ')
}

type Choice = View['choices']['lessons'][number]

/** Lessons that a course like this teaches only when it asks for them. */
export const toAskFor = (lessons: readonly Choice[]): Choice[] => lessons.filter((it) => !it.fits)

/** Lessons that fit a course like this and have no place in it, though nobody left them out. */
export const withoutPlace = (lessons: readonly Choice[], shown: readonly Pick<Lesson, 'id'>[]): Choice[] =>
  lessons.filter((it) => it.fits && !shown.some((one) => one.id === it.id))
