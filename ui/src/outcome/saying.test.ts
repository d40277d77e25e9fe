// What is said aloud of a change: what moved and by how much, once.
import { beforeEach, expect, test, vi } from 'vitest'
import { PAUSE_MS, Saying, inWords } from './saying.svelte'

type Heard = Parameters<Saying['hear']>[0]

const view = (height: string, length: string): Heard => ({
  file: 'a.walling',
  unsaved: true,
  undo: [{ key: 'wall.height', from: '1.07 m', to: height }],
  moved: length ? [{ what: 'length', before: '9.0 m', after: length }] : [],
})
const opened: Heard = { file: 'a.walling', unsaved: false, undo: null, moved: [] }

let saying: Saying
beforeEach(() => {
  vi.useFakeTimers()
  saying = new Saying()
  saying.hear(opened)
})

test('each figure is a sentence with both its values', () => {
  const bars = { what: 'bars', before: '', after: '8' }
  expect(inWords([{ what: 'length', before: '9.0 m', after: '8.5 m' }, bars])).toBe(
    'Length from 9.0 m to 8.5 m. Bars from none to 8.',
  )
})

test('letters that come quickly are said once, with what they come to', () => {
  const heard: string[] = []
  for (const height of ['1 m', '1.2 m', '1.25 m']) {
    saying.hear(view(height, height === '1.25 m' ? '8.1 m' : '9.4 m'))
    vi.advanceTimersByTime(PAUSE_MS / 2)
    heard.push(saying.words)
  }
  vi.advanceTimersByTime(PAUSE_MS)
  expect(heard).toEqual(['', '', ''])
  expect(saying.words).toBe('Length from 9.0 m to 8.1 m.')
})

test('what could be done otherwise comes later and is no change', () => {
  saying.hear(view('1.2 m', '8.5 m'))
  vi.advanceTimersByTime(PAUSE_MS / 2)
  saying.hear(view('1.2 m', '8.5 m'))
  vi.advanceTimersByTime(PAUSE_MS / 2)
  expect(saying.words).toBe('Length from 9.0 m to 8.5 m.')
  saying.hear(view('1.2 m', '8.5 m'))
  expect(saying.words).toBe('Length from 9.0 m to 8.5 m.')
})

test('the same with its fields in another order is no change', () => {
  saying.hear(view('1.2 m', '8.5 m'))
  vi.advanceTimersByTime(PAUSE_MS)
  const turned = <T extends object>(it: T): T => Object.fromEntries(Object.entries(it).toReversed()) as T
  const same = view('1.2 m', '8.5 m')
  saying.hear({ ...same, unsaved: false, undo: same.undo?.map(turned) ?? null, moved: same.moved.map(turned) })
  vi.advanceTimersByTime(PAUSE_MS)
  expect(saying.words).toBe('Saved.')
})

test('a change that moves the same again is said again', () => {
  saying.hear(view('1.2 m', '8.5 m'))
  vi.advanceTimersByTime(PAUSE_MS)
  saying.hear(view('1.21 m', '8.5 m'))
  expect(saying.words).toBe('')
  vi.advanceTimersByTime(PAUSE_MS)
  expect(saying.words).toBe('Length from 9.0 m to 8.5 m.')
})

test('saving is said, opening another course is not', () => {
  saying.hear(view('1.2 m', ''))
  saying.hear({ ...view('1.2 m', ''), unsaved: false })
  vi.advanceTimersByTime(PAUSE_MS)
  expect(saying.words).toBe('Saved.')
  saying.hear({ ...view('1.3 m', '8 m'), file: 'b.walling' })
  vi.advanceTimersByTime(PAUSE_MS)
  expect(saying.words).toBe('')
})
