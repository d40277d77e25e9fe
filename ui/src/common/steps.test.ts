// Where a key is asked for, and how rows come together.
import { describe, expect, it } from 'vitest'
import { grouped, without } from './record'
import type { View } from '../bindings'
import { stepNamed, stepOfKey, stepOfToDo, STEPS, type StepId } from './steps'

describe('a key', () => {
  it.each([
    ['title', 'venue'], ['venue.country', 'venue'], ['venue.longest_wall', 'wall'], ['wall.footing.depth', 'wall'],
    ['pace.chance', 'wall'], ['pace.seed', 'pages'], ['day.0.breaks.1.start', 'days'],
    ['kit.on_hand.Spade', 'kit'], ['group.novices', 'group'], ['stone.on_site.face', 'stone'], ['frames.bar', 'frames'],
    ['vehicle.0.payload', 'load'], ['money.fee', 'money'], ['kit.heat', 'kit'],
    ['pace.without', 'days'], ['timetable.leave_out', 'days'], ['absence.0.who', 'group'], ['progress.2.time', 'today'],
  ])('%s is asked for at %s', (key, step) => expect(stepOfKey(key)).toBe(step))
})

describe('steps', () => {
  it('are found by their id, each once', () => {
    for (const step of STEPS) expect(stepNamed(step.id)).toBe(step)
    expect(new Set(STEPS.map((step) => step.id)).size).toBe(STEPS.length)
  })
  it('know what is to be done there', () => {
    expect(stepOfToDo({ id: 'kit:walling-hammer', part: 'kit' })).toBe('kit')
    expect(stepOfToDo({ id: 'consent', part: 'people' })).toBe('group')
    expect(stepOfToDo({ id: 'print', part: 'papers' })).toBe('pages')
    expect(stepOfToDo({ id: 'count-home', part: 'kit' })).toBe('load')
    expect(stepOfToDo({ id: 'new', part: 'of a newer program' })).toBeUndefined()
  })
  it('tell what counts, not what is done or only a reminder', () => {
    const now = (id: StepId, view: object) => stepNamed(id).now({ written: view } as View)
    expect(now('ready', { to_do: [{ counts: true }, { counts: false }] })).toBe('1 to do')
    expect(now('ready', { to_do: [{ counts: false }] })).toBe('nothing left to do')
  })
  it('tell how it travels and what it costs a head', () => {
    const now = (id: StepId, view: object) => stepNamed(id).now({ written: view } as View)
    expect(now('load', { loads: null })).toBe('no vehicle yet')
    expect(now('load', { loads: { runs: [{}], fits_nowhere: '' } })).toBe('1 run')
    expect(now('load', { loads: { runs: [{}, {}], fits_nowhere: 'Barrow' } })).toBe('something is too heavy')
    expect(now('today', { running: { today: null } })).toBe('nothing told yet')
    expect(now('today', { running: { today: { done: '34 %' } } })).toBe('34 % built')
    expect(now('money', { money: null })).toBe('no prices yet')
    expect(now('money', { money: { lines: [{}], per_head: 'GBP 12.00' } })).toBe('GBP 12.00 a head')
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
