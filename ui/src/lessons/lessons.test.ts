import { expect, it, vi } from 'vitest'
import type { LessonChange, LessonDraft, LessonKept, LessonShelf, PagePreview, View } from '../bindings'
import { Lessons, PAGE_MS } from './lessons.svelte'

const SHELF: LessonShelf = { lessons: [], stages: [], conditions: [], cautions: [], drawings: [], figures: [], folder: '/own' }
const draft = (text: string, more: Partial<LessonDraft> = {}): LessonDraft => ({
  id: 'frost', text, parts: null, fault: null, whose: 'own', saved: false, handout: true, ...more,
})
const ok = <T>(value: T) => Promise.resolve({ ok: true as const, value })
const body = (text: string): LessonChange => ({ part: 'body', typed: text })

/** A shelf that writes each body behind the text before. */
function made() {
  const rust = {
    lessonShelf: vi.fn(() => ok(SHELF)),
    lesson: vi.fn(() => ok(draft('', { saved: true }))),
    newLesson: vi.fn(() => ok(draft('', { whose: 'new' }))),
    changeLesson: vi.fn((_: string, text: string, change: LessonChange) => ok(draft(`${text}${String(change.typed)}`))),
    previewLesson: vi.fn(() => ok<PagePreview>({ svg: '', page: 1, pages: 2, alone: false, places: [], own: [] })),
    saveLesson: vi.fn((_: string, text: string) => ok({ draft: draft(text, { saved: true }), shelf: SHELF } as LessonKept)),
    takeLessonAway: vi.fn((_: string, text: string) => ok({ draft: draft(text, { whose: 'built-in' }), shelf: SHELF } as LessonKept)),
  }
  const course = { tell: async (question: () => Promise<{ ok: boolean } | { value: View | null }>) => void (await question()) }
  return { rust, lessons: new Lessons(rust, course as unknown as ConstructorParameters<typeof Lessons>[1]) }
}

it('sends one part after another, each about the text the one before left', async () => {
  const { rust, lessons } = made()
  await lessons.open('frost')
  lessons.type('body', body('a'), 'a')
  lessons.type('title', { part: 'word', typed: ['title', 'b'] }, 'b')
  await lessons.settle('title')
  expect(rust.changeLesson.mock.calls.map(([, text]) => text)).toEqual(['', 'a'])
  expect(lessons.draft?.text).toBe('atitle,b')
  expect(lessons.typed).toEqual({ body: 'a' })
})

it('sets the page when nothing is typed any more, and not while the lesson is not sound', async () => {
  vi.useFakeTimers()
  const { rust, lessons } = made()
  await lessons.open('frost')
  rust.previewLesson.mockClear()
  lessons.type('body', body('a'))
  lessons.type('body', body('b'))
  await vi.advanceTimersByTimeAsync(PAGE_MS)
  expect(rust.previewLesson).toHaveBeenCalledTimes(1)
  rust.changeLesson.mockResolvedValueOnce({ ok: true, value: draft('x', { fault: { part: 'body', line: 1, what: 'w', cure: '' } }) })
  lessons.type('body', body('c'))
  await vi.advanceTimersByTimeAsync(PAGE_MS)
  expect(rust.previewLesson).toHaveBeenCalledTimes(1)
  expect(lessons.late).toBe(true)
  vi.useRealTimers()
})

it('keeps what was not saved when the lesson is left', async () => {
  const { rust, lessons } = made()
  await lessons.open('frost')
  lessons.type('body', body('a'))
  await lessons.leave()
  expect(lessons.left['frost']?.text).toBe('a')
  await lessons.open('frost')
  expect(rust.lesson).toHaveBeenCalledTimes(1)
  expect(lessons.draft?.text).toBe('a')
  await lessons.save()
  await lessons.leave()
  expect(lessons.left).toEqual({})
})

it('asks once before a lesson is taken away, and its words stay', async () => {
  const { rust, lessons } = made()
  await lessons.open('frost')
  lessons.type('body', body('a'))
  await lessons.takeAway()
  expect(rust.takeLessonAway).not.toHaveBeenCalled()
  expect(lessons.asking).toBe(true)
  await lessons.takeAway()
  expect(rust.takeLessonAway).toHaveBeenCalledWith('frost', 'a')
  expect(lessons.draft?.text).toBe('a')
  expect(lessons.said).toContain('built-in lesson counts again')
})
