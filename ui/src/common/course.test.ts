// What is typed reaches Rust in order, nothing is lost, and late answers change nothing.
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { Course } from './course.svelte'
import { openSlowly, pause, type Rust, trouble } from './slow-rust'

let rust: Rust
let course: Course

beforeEach(async () => {
  ;({ rust, course } = await openSlowly())
})
afterEach(() => void vi.useRealTimers())

describe('typing', () => {
  it('is sent once a person pauses, in the last words only', async () => {
    for (const text of ['1', '1.', '1.2 m']) course.type('wall.height', text)
    expect(rust.asked).toEqual([])
    await pause()
    expect(rust.asked).toEqual([['wall.height', '1.2 m']])
    expect(course.view?.values['wall.height']).toBe('1.2 m')
  })

  it('in two fields at once loses neither', async () => {
    course.type('wall.height', '1.2 m')
    course.type('wall.length', '9 m')
    await pause()
    expect(rust.asked).toEqual([['wall.height', '1.2 m'], ['wall.length', '9 m']])
  })

  it('waits for the answer before, and skips what was overtaken meanwhile', async () => {
    rust.held = true
    course.type('wall.height', '1.1 m')
    await pause()
    course.type('wall.height', '1.2 m')
    await pause()
    course.type('wall.height', '1.3 m')
    await pause()
    expect(rust.asked).toEqual([['wall.height', '1.1 m']])
    await rust.answer()
    expect(rust.asked).toEqual([['wall.height', '1.1 m'], ['wall.height', '1.3 m']])
    expect(course.text('wall.height')).toBe('1.3 m')
    await rust.answer()
    expect(course.view?.values['wall.height']).toBe('1.3 m')
  })

  it('does not complain of what has been typed over', async () => {
    rust.held = true
    course.type('wall.height', 'bad')
    await pause()
    course.type('wall.height', '1.2 m')
    await rust.answer()
    expect(course.troubleAt('wall.height')).toBeUndefined()
  })

  it('goes out before a save that comes in the middle of it', async () => {
    const order: string[] = []
    course.type('wall.height', '1.2 m')
    await course.ask(async () => {
      order.push(`saved after ${rust.asked.length}`)
      return rust.view()
    })
    expect(order).toEqual(['saved after 1'])
  })
})

describe('a field', () => {
  it('keeps its own words while a person is in it, then takes those of the file', async () => {
    rust.edit = async (key) => {
      rust.values = { ...rust.values, [key]: '09:00' }
      return rust.view()
    }
    course = new Course(rust)
    course.enter('day.0.start')
    course.type('day.0.start', '9:00')
    await pause()
    expect(course.text('day.0.start')).toBe('9:00')
    course.leave('day.0.start')
    expect(course.text('day.0.start')).toBe('09:00')
  })

  it('keeps what was refused, says why, and leaves the last good plan', async () => {
    course.type('wall.height', 'bad')
    await pause()
    course.leave('wall.height')
    expect(course.text('wall.height')).toBe('bad')
    expect(course.troubleAt('wall.height')?.what).toBe('not that')
    expect(course.view?.values['wall.height']).toBe('1 m')
  })

  it('shows a clash at the other field as well', async () => {
    rust.edit = async () => ({ ok: false, trouble: trouble('wall.through_rows.0') })
    course = new Course(rust)
    course.type('wall.height', '0.5 m')
    await pause()
    expect(course.troubleAt('wall.height')).toBeDefined()
    expect(course.troubleAt('wall.through_rows')).toBeDefined()
    expect(course.troubleAt('wall.length')).toBeUndefined()
  })

  it('is tried again when another change may have made room for it', async () => {
    rust.refuses = (key, text) => key === 'wall.height' && text === '0.5 m' && rust.values['rows'] !== '0.3 m'
    course.type('wall.height', '0.5 m')
    await pause()
    expect(course.troubleAt('wall.height')).toBeDefined()
    course.type('rows', '0.3 m')
    await pause()
    expect(course.troubleAt('wall.height')).toBeUndefined()
    expect(course.view?.values['wall.height']).toBe('0.5 m')
  })
})

describe('a question of another place', () => {
  it('comes after what was typed; its refusal goes to who asked and to nobody else', async () => {
    course.type('wall.height', '1.2 m')
    const refusal = await course.tell(async () => ({ ok: false, trouble: trouble(`after ${rust.asked.length}`) }))
    expect(refusal?.key).toBe('after 1')
    expect(course.trouble).toBeUndefined()
    expect(await course.tell(async () => rust.view())).toBeUndefined()
  })
})

describe('undo', () => {
  it('first lets go of what was refused, and asks Rust only the next time', async () => {
    const undo = vi.fn(async () => rust.view())
    course.type('wall.height', 'bad')
    await course.undo(undo)
    expect(undo).not.toHaveBeenCalled()
    expect(course.text('wall.height')).toBe('1 m')
    await course.undo(undo)
    expect(undo).toHaveBeenCalledTimes(1)
  })
})

describe('another course', () => {
  it('does not come when the dialog was cancelled, and nothing typed is lost', async () => {
    course.type('wall.height', 'bad')
    await course.replace(async () => ({ ok: true, value: null }))
    expect(course.text('wall.height')).toBe('bad')
  })

  it('that is refused leaves this one open and says why', async () => {
    const before = course.view
    await course.replace(async () => ({ ok: false, trouble: trouble('') }))
    expect(course.view).toBe(before)
    expect(course.trouble?.what).toBe('not that')
  })
})
