// A pointer or a key leads to a stop that Rust offered, and a held drawing stays under the pointer.
import { describe, expect, it } from 'vitest'
import type { Handle } from '../bindings'
import { fit, inBox, inSteps, type Part } from '../common/pixels'
import { draggedTo, held, steppedTo, wholeOf, withPart } from './grip'

const stop = (typed: string, place: number) => ({ typed, words: typed, place })
/** A top edge 100 mm down; 5 cm are 2.5 mm. */
const height: Handle = {
  id: 'height', key: 'wall.height', name: 'Height of the wall', across: false, at: [65, 100], fixed: [65, 152.5],
  mm_per_m: 50, now: 1,
  stops: [stop('1.00 m', 102.5), stop('1.05 m', 100), stop('1.10 m', 97.5), stop('1.15 m', 95)],
}

describe('a pointer', () => {
  it('leads to the nearest stop', () => {
    expect(draggedTo(height, [0, -12], 4)).toBe(2)
    expect(draggedTo(height, [0, -4000], 4)).toBe(3)
    expect(draggedTo(height, [0, 4000], 4)).toBe(0)
  })

  it('counts from where the handle was, not from where it was taken hold of', () => {
    expect(draggedTo(height, [40, 0], 4)).toBe(1)
    expect(draggedTo(height, [0, -9], 4)).toBe(2)
    expect(draggedTo(height, [0, 9], 4)).toBe(0)
  })

  it('moves a handle along its own way only', () => {
    const across = { ...height, across: true }
    expect(draggedTo(across, [0, -40], 4)).toBe(1)
    expect(draggedTo(across, [-20, 0], 4)).toBe(3)
  })
})

describe('a key', () => {
  it('leads one on, five on, or to an end', () => {
    for (const [key, to] of [
      ['ArrowUp', 11], ['ArrowRight', 11], ['ArrowDown', 9], ['ArrowLeft', 9], ['PageUp', 15], ['PageDown', 5],
      ['Home', 0], ['End', 19],
    ] as const) expect(steppedTo(key, 10, 20), key).toBe(to)
  })

  it('stops at the ends, and others lead nowhere', () => {
    expect(steppedTo('PageUp', 18, 20)).toBe(19)
    expect(steppedTo('ArrowLeft', 0, 20)).toBe(0)
    expect(steppedTo('Tab', 3, 20)).toBeUndefined()
  })
})

describe('a drawing', () => {
  const svg = '<svg viewBox="0 0 130 104" role="img"></svg>'

  it('lies in the middle of its box', () => {
    const whole = wholeOf(svg)
    expect(whole).toEqual([0, 0, 130, 104])
    const lies = fit(whole, [520, 520])
    expect(lies).toEqual({ scale: 4, left: 0, top: 52 })
    expect(inBox(lies, whole, [65, 52])).toEqual([260, 260])
    expect(withPart(svg, [1, 2, 3, 4])).toContain('viewBox="1 2 3 4"')
  })

  it.each([
    // The part of a drawing, and the same with its margins: its middle stays where it is.
    [[0, 0, 130, 104], [0, -3, 130, 110]],
    [[0, 0, 131.2, 110], [-4.4, 0, 140, 110]],
    [[0, 0, 138.8, 101], [-0.6, -4.5, 140, 110]],
    [[7, 5, 4, 120], [4, 5, 10, 120]],
  ] as const)('of %j has a size of whole steps', (part, wanted) => {
    expect(inSteps(part)).toEqual(wanted.map((it) => expect.closeTo(it, 9)))
  })

  it('that was made anew at another scale stays under the pointer', () => {
    const part: Part = [0, 0, 130, 104]
    // The same wall, 1.10 m high, at four fifths of the scale and elsewhere on its paper.
    const after: Handle = { ...height, mm_per_m: 40, fixed: [70, 120], at: [70, 76] }
    const now = held(part, height, after)
    const lies = fit(now, [520, 416])
    const was = fit(part, [520, 416])
    const [x, y] = inBox(lies, now, after.fixed)
    const [x0, y0] = inBox(was, part, height.fixed)
    expect(x).toBeCloseTo(x0)
    expect(y).toBeCloseTo(y0)
    // 1.10 m above what stays where it is: where the stop was when the drag began.
    expect(inBox(lies, now, after.at)[1]).toBeCloseTo(inBox(was, part, [65, 97.5])[1])
  })
})
