// What is typed on the way home, and what it comes to.
import { beforeEach, describe, expect, it } from 'vitest'
import type { Reply } from '../backend'
import type { CountedHome, KitStore, ReturnTyped, View } from '../bindings'
import { Course } from '../common/course.svelte'
import { OpenStore } from '../common/kit-store.svelte'
import { allBack, stillBack, told } from './fates'
import { Home } from './home.svelte'

const SPADE = { item: 'Spade', count: 4 }

describe('what is left to come back', () => {
  it('is what went out, less what is told otherwise', () => {
    expect(stillBack(4, { ...allBack(4), broken: '1', lost: ' 1 ' })).toBe('2')
    expect(stillBack(4, allBack(4))).toBe('4')
  })
  it('is left to the person where that is no whole number, or more than went out', () => {
    expect(stillBack(4, { ...allBack(4), broken: 'one' })).toBeUndefined()
    expect(stillBack(4, { ...allBack(4), broken: '5' })).toBeUndefined()
  })
})

it('tells what was not counted, and what the store does not know', () => {
  expect(told({ uncounted: [], not_in_store: [] })).toHaveLength(1)
  const all = told({ uncounted: [SPADE], not_in_store: [{ item: 'Tent', count: 1 }] })
  expect(all[1]).toContain('4 Spade')
  expect(all[2]).toContain('1 Tent')
})

describe('counting home', () => {
  let asked: ReturnTyped[]
  let answer: Reply<CountedHome>
  let home: Home

  beforeEach(() => {
    asked = []
    answer = { ok: true, value: { view: { advised: true } as View, uncounted: [], not_in_store: [] } }
    const rust = {
      kitStore: async () => ({ ok: true as const, value: {} as KitStore }),
      kitHome: async (returns: ReturnTyped[]) => {
        asked = returns
        return answer
      },
      kitNotHome: async () => ({ ok: true as const, value: { advised: true } as View }),
    }
    home = new Home(rust, new OpenStore(rust, new Course({ edit: async () => ({ ok: true, value: { advised: true } as View }) })))
  })

  it('begins with all of it back, and lowers that while another number is typed', async () => {
    home.type(SPADE, 'broken', '1')
    await home.count([SPADE, { item: 'Bar', count: 8 }])
    expect(asked).toEqual([
      { item: 'Spade', back: '3', care: '', broken: '1', used_up: '', lost: '' },
      { item: 'Bar', back: '8', care: '', broken: '', used_up: '', lost: '' },
    ])
    expect(home.told).toHaveLength(1)
  })

  it('leaves what a person has typed as back', () => {
    home.type(SPADE, 'back', '2')
    home.type(SPADE, 'broken', '1')
    expect(home.text(SPADE)).toMatchObject({ back: '2', broken: '1' })
  })

  it('says what was refused at its field', async () => {
    answer = { ok: false, trouble: { code: 'not-typed', key: 'lost.Spade', what: 'no count', cure: '' } }
    await home.count([SPADE])
    expect(home.troubleAt('lost', SPADE)?.what).toBe('no count')
    expect(home.troubleAt('back', SPADE)).toBeUndefined()
    expect(home.told).toEqual([])
  })

  it('is taken back with what was typed still there, and forgotten with the course', async () => {
    home.type(SPADE, 'broken', '1')
    await home.count([SPADE])
    await home.takeBack()
    expect(home.text(SPADE).broken).toBe('1')
    expect(home.told[0]).toContain('Taken back')
    home.forget()
    expect(home.text(SPADE)).toEqual(allBack(4))
  })
})
