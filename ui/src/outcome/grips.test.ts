// One drag is one change to undo, Escape takes it back, and what is refused leaves the handle where it was.
import { afterEach, beforeEach, expect, it, vi } from 'vitest'
import type { Handle } from '../bindings'
import { ADVICE_MS, Course } from '../common/course.svelte'
import { Rust } from '../common/slow-rust'
import { Grips } from './grips.svelte'

// What could be done otherwise compares two plans; here there are none.
vi.mock('../common/advice', () => ({ withAdviceOf: (view: unknown) => view }))

const stop = (typed: string, place: number) => ({ typed, words: typed, place })
/** 5 cm are 2.5 mm; the file writes the height as `1 m`. */
const height: Handle = {
  id: 'height', key: 'wall.height', name: 'Height of the wall', across: false, at: [65, 100], fixed: [65, 150],
  mm_per_m: 50, now: 1, stops: [stop('bad', 102.5), stop('1.00 m', 100), stop('1.05 m', 97.5), stop('1.10 m', 95)],
}
const pause = () => vi.advanceTimersByTimeAsync(0)

let rust: Rust
let course: Course
let grips: Grips

beforeEach(async () => {
  vi.useFakeTimers()
  rust = new Rust()
  const unadvised = async (...edit: Parameters<Rust['edit']>) => {
    const reply = await rust.edit(...edit)
    return reply.ok ? { ...reply, value: { ...reply.value, advised: false } } : reply
  }
  course = new Course({ edit: unadvised, advise: async () => rust.view() })
  await course.replace(async () => rust.view())
  grips = new Grips(course)
})
afterEach(() => void vi.useRealTimers())

it('a drag is one change, also where a person rests in the middle of it', async () => {
  grips.grab(height, [0, 500], [0, 0, 130, 130], 4)
  grips.drag([0, 490])
  await vi.advanceTimersByTimeAsync(ADVICE_MS)
  grips.drag([0, 480])
  await pause()
  grips.leave()
  expect(rust.asked.map(([, text]) => text)).toEqual(['1.05 m', '1.10 m'])
  expect(rust.wentOn).toEqual([false, true])
  grips.grab(height, [0, 500], [0, 0, 130, 130], 4)
  grips.drag([0, 490])
  await pause()
  expect(rust.wentOn).toEqual([false, true, false])
})

it('back where it began the file says it in its own words', async () => {
  grips.grab(height, [0, 500], [0, 0, 130, 130], 4)
  grips.drag([0, 490])
  await pause()
  grips.drag([0, 500])
  await pause()
  expect(rust.values['wall.height']).toBe('1 m')
})

it('Escape takes back what the keys did, and then means nothing here', async () => {
  grips.enter(height)
  expect(grips.key(height, 'ArrowUp')).toBe(true)
  expect(grips.key(height, 'ArrowUp')).toBe(true)
  await pause()
  expect(rust.values['wall.height']).toBe('1.10 m')
  expect(grips.key(height, 'Escape')).toBe(true)
  await pause()
  expect(rust.values['wall.height']).toBe('1 m')
  expect(grips.key(height, 'Escape')).toBe(false)
  expect(grips.key(height, 'Tab')).toBe(false)
})

it('what is refused is said when it is let go, and keys go on from the last sound plan', async () => {
  grips.grab(height, [0, 500], [0, 0, 130, 130], 4)
  grips.drag([0, 520])
  await pause()
  grips.leave()
  expect(course.troubleAt('wall.height')).toBeDefined()
  expect(course.view?.values['wall.height']).toBe('1 m')
  grips.key(height, 'ArrowUp')
  await pause()
  expect(rust.values['wall.height']).toBe('1.05 m')
  expect(course.troubleAt('wall.height')).toBeUndefined()
})
