// The list of courses: readiness is asked for one by one, and an older round gives way.
import { expect, it } from 'vitest'
import type { Reply } from '../backend'
import type { Readiness, RecentCourse, YourCourses } from '../bindings'
import { Courses } from './courses.svelte'

const course = (path: string, broken = false): RecentCourse => ({
  path, file: path, folder: '/', title: path, place: '', dates: '', again: '', open: false,
  trouble: broken ? { code: 'gone', key: '', what: 'gone', cure: '' } : null,
})

function set(recent: RecentCourse[]) {
  let list = recent
  const waiting: (() => void)[] = []
  const asked: string[] = []
  const all = (): Reply<YourCourses> => ({ ok: true, value: { start_here: true, recent: list, examples: [], notice: '' } })
  const rust = {
    yourCourses: async () => all(),
    beginChoices: async () => ({ ok: false, trouble: { code: '', key: '', what: '', cure: '' } }),
    courseReadiness: (path: string): Promise<Reply<Readiness>> => {
      asked.push(path)
      return new Promise((done) => waiting.push(() => done({ ok: true, value: { words: `${path} ready`, late: false } })))
    },
    forgetCourse: async (path: string) => {
      list = list.filter((it) => it.path !== path)
      return all()
    },
  }
  const answer = async () => {
    waiting.shift()?.()
    await new Promise((done) => setTimeout(done))
  }
  return { courses: new Courses(rust as never, async () => {}), asked, answer }
}

it('asks one after another, and not of what can not be opened', async () => {
  const { courses, asked, answer } = set([course('a'), course('b', true), course('c')])
  await courses.show('list')
  expect(asked).toEqual(['a'])
  await answer()
  expect(asked).toEqual(['a', 'c'])
  await answer()
  expect(courses.readiness.c?.words).toBe('c ready')
  expect('b' in courses.readiness).toBe(false)
})

it('lets go of an older round', async () => {
  const { courses, asked, answer } = set([course('a'), course('b')])
  await courses.show('list')
  await courses.show('list')
  await answer()
  await answer()
  expect(asked).toEqual(['a', 'a', 'b'])
})

it('asks nothing while it is not seen, and knows whether to start here', async () => {
  const { courses, asked } = set([course('a')])
  expect(await courses.look()).toBe(true)
  expect(asked).toEqual([])
})

it('knows a way back once a course was opened', async () => {
  const { courses } = set([course('a')])
  courses.opened(true)
  expect([courses.shown, courses.back]).toEqual([true, false])
  courses.opened(false)
  await courses.show('begin')
  expect([courses.shown, courses.back, courses.at]).toEqual([true, true, 'begin'])
})

it('takes a course off', async () => {
  const { courses } = set([course('a'), course('b')])
  await courses.look()
  await courses.forget('a')
  expect(courses.all?.recent.map((it) => it.path)).toEqual(['b'])
})
