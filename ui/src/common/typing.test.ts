// Typing on is one change, complaints wait for a pause, and so does what could be done otherwise.
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import type { Reply } from '../backend'
import type { View } from '../bindings'
import { ADVICE_MS, Course } from './course.svelte'
import { openSlowly, pause, type Rust } from './slow-rust'
import { REFUSAL_MS } from './unsaid'

let rust: Rust
let course: Course

beforeEach(async () => {
  ;({ rust, course } = await openSlowly())
})
afterEach(() => void vi.useRealTimers())

describe('typing on in one field', () => {
  it('is one change until the field is left', async () => {
    course.enter('wall.height')
    for (const text of ['1.1 m', '1.15 m']) {
      course.type('wall.height', text)
      await pause()
    }
    course.leave('wall.height')
    course.enter('wall.height')
    course.type('wall.height', '1.2 m')
    await pause()
    expect(rust.wentOn).toEqual([false, true, false])
  })

  it('is one change also where the field is left before all of it was answered', async () => {
    rust.held = true
    course.enter('wall.height')
    for (const text of ['1.1 m', '1.15 m']) {
      course.type('wall.height', text)
      await pause()
    }
    course.leave('wall.height')
    await rust.answer()
    await rust.answer()
    expect(rust.wentOn).toEqual([false, true])
  })

  it('is one change also where another drawing came in between', async () => {
    course.enter('wall.height')
    course.type('wall.height', '1.1 m')
    await course.ask(async () => rust.view(), true)
    course.type('wall.height', '1.15 m')
    await pause()
    expect(rust.wentOn).toEqual([false, true])
  })

  it('is not complained of before a person pauses', async () => {
    course.enter('wall.height')
    course.type('wall.height', 'bad')
    await pause()
    expect(course.troubleAt('wall.height')).toBeUndefined()
    await vi.advanceTimersByTimeAsync(REFUSAL_MS)
    expect(course.troubleAt('wall.height')?.what).toBe('not that')
  })

  it('is complained of when the field is left', async () => {
    course.enter('wall.height')
    course.type('wall.height', 'bad')
    await pause()
    course.leave('wall.height')
    expect(course.troubleAt('wall.height')).toBeDefined()
  })
})

describe('what could be done otherwise', () => {
  const view = (advised: boolean, lift: string): View =>
    ({
      advised, values: {}, plan: {}, drawings: {},
      written: { running: { lifts: lift ? [{ what: lift, figure: '9 m' }] : [], about_length: [], today: null } },
    }) as unknown as View

  it('stands as it was while a person types, and is asked for once they pause', async () => {
    const edit = async (): Promise<Reply<View>> => ({ ok: true, value: view(false, '') })
    const advise = vi.fn(async (): Promise<Reply<View>> => ({ ok: true, value: view(true, 'another day') }))
    const changed = vi.fn()
    course = new Course({ edit, advise }, changed)
    await course.replace(async () => ({ ok: true, value: view(true, 'an earlier start') }))
    const lift = () => course.view?.written.running.lifts[0]?.what
    for (const text of ['1.1 m', '1.2 m']) {
      course.type('wall.height', text)
      await pause()
      expect(lift()).toBe('an earlier start')
    }
    expect(advise).not.toHaveBeenCalled()
    await vi.advanceTimersByTimeAsync(ADVICE_MS)
    expect(advise).toHaveBeenCalledTimes(1)
    expect(lift()).toBe('another day')
    // It is told which of them were but advice.
    expect(changed.mock.calls).toEqual([[false], [false], [false], [true]])
  })
})
