import { expect, it } from 'vitest'
import { lessonsOf, lessonWords, toAskFor, withoutPlace } from './lessons'

const lesson = (id: string, title: string, fits = true) => ({ id, title, fits, taught: fits, why: 'on every course' })
const seen = (values: Record<string, string> = {}) => ({
  values,
  choices: { lessons: [lesson('day', 'Briefing'), lesson('copes', 'Copes'), lesson('heads', 'Built ends')] },
  plan: {
    timetable: [
      { day: 1, lesson: null }, { day: 1, lesson: 'copes' }, { day: 2, lesson: 'day' },
    ],
  },
  written: {
    days: [
      { number: 1, entries: [{ start: '09:00', lasts: '2 h' }, { start: '11:00', lasts: '15 min' }] },
      { number: 2, entries: [{ start: '09:00', lasts: '10 min' }] },
    ],
  },
})

it('says in order when each lesson is given, and leaves out what this course has no use for', () => {
  expect(lessonsOf(seen()).map((it) => [it.title, it.given])).toEqual([
    ['Copes', ['day 1, 11:00, 15 min']], ['Briefing', ['day 2, 09:00, 10 min']],
  ])
})

it('knows where a lesson was moved to, and that one is left out though it is given no more', () => {
  const values = { 'wish.0.lesson': 'copes', 'wish.0.day': '2', 'wish.0.at': '10:30', 'timetable.leave_out': 'heads' }
  const [copes, , heads] = lessonsOf(seen(values))
  expect(copes).toMatchObject({ day: '2', time: '10:30', leftOut: false })
  expect(heads).toMatchObject({ id: 'heads', day: '', given: [], leftOut: true })
})

it('counts what is not where it falls', () => {
  const put = (day: string, leftOut = false) => ({ day, leftOut })
  expect(lessonWords([put('')])).toBe('each where it falls')
  expect(lessonWords([put('2'), put('', true), put('1', true)])).toBe('1 moved, 2 left out')
})

it('tells lessons to be asked for from those that find no stage here', () => {
  const lessons = [lesson('copes', 'Copes'), lesson('lifting', 'Lifting', false), lesson('heads', 'Built ends')]
  expect(toAskFor(lessons).map((it) => it.id)).toEqual(['lifting'])
  expect(withoutPlace(lessons, [{ id: 'copes' }]).map((it) => it.id)).toEqual(['heads'])
})
