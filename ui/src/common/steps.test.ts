// Where a key is asked for, and how rows come together.
import { describe, expect, it } from 'vitest'
import { grouped, without } from './record'
import { stepNamed, stepOfKey, stepOfToDo, STEPS } from './steps'

describe('a key', () => {
  it.each([
    ['title', 'venue'], ['venue.country', 'venue'], ['venue.longest_wall', 'wall'], ['wall.footing.depth', 'wall'],
    ['pace.chance', 'wall'], ['pace.seed', 'pages'], ['day.0.breaks.1.start', 'days'],
    ['kit.on_hand.Spade', 'kit'], ['group.novices', 'group'], ['stone.on_site.face', 'stone'], ['frames.bar', 'frames'],
  ])('%s is asked for at %s', (key, step) => expect(stepOfKey(key)).toBe(step))
})

describe('steps', () => {
  it('are found by their id, each once', () => {
    for (const step of STEPS) expect(stepNamed(step.id)).toBe(step)
    expect(new Set(STEPS.map((step) => step.id)).size).toBe(STEPS.length)
  })
  it('know what is to be done there', () => {
    expect(stepOfToDo('bars')).toBe('frames')
    expect(stepOfToDo('of a newer program')).toBeUndefined()
  })
})

describe('rows', () => {
  it('come under their headings in the order these first come', () => {
    const rows = ['shelter 1', 'site 1', 'shelter 2']
    expect(grouped(rows, (row) => row.split(' ')[0] ?? '')).toEqual([
      ['shelter', ['shelter 1', 'shelter 2']], ['site', ['site 1']],
    ])
  })
  it('are left out without a change to the old record', () => {
    const old = { a: 1, b: 2 }
    expect(without(old, 'a')).toEqual({ b: 2 })
    expect(old).toEqual({ a: 1, b: 2 })
  })
})
