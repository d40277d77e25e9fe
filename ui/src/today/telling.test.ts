// What is told reaches Rust with its time; what was refused stays to be mended.
import { beforeEach, expect, it } from 'vitest'
import type { Told } from '../backend'
import type { Trouble } from '../bindings'
import { bayName, Telling } from './telling.svelte'

const REFUSAL: Trouble = { code: 'not-typed', key: 'done', what: 'no share', cure: '' }
const WHEN = { day: 0, time: '11:40' }
const DIG = { id: 'dig', name: 'Dig the trench' }

let told: Told[]
let answer: Trouble | undefined
let telling: Telling

beforeEach(() => {
  told = []
  answer = undefined
  telling = new Telling({
    tell: async (it) => {
      told.push(it)
      return answer
    },
    untell: async () => answer,
  })
})

it('is told with its time, and the field is free again', async () => {
  telling.type('dig', 1, '60')
  await telling.tell(WHEN, DIG, 1, telling.share('dig', 1), '11:40 am')
  expect(told).toEqual([{ day: 0, time: '11:40', stage: 'dig', bay: 1, done: '60' }])
  expect(telling.share('dig', 1)).toBe('')
  expect(telling.said).toBe('Told for 11:40 am: Dig the trench, bay 2, 60 %.')
})

it('stays in its field when it is refused, and says why', async () => {
  answer = REFUSAL
  telling.type('dig', null, 'most')
  await telling.tell(WHEN, DIG, null, 'most', '11:40 am')
  expect(telling.share('dig', null)).toBe('most')
  expect(telling.trouble).toBe(REFUSAL)
  expect(telling.said).toBe('')
})

it('is taken back, and forgotten with the course', async () => {
  telling.own = WHEN
  await telling.takeBack(0, 'day 1, 11:40')
  expect(telling.said).toContain('day 1, 11:40')
  telling.forget()
  expect([telling.own, telling.said]).toEqual([undefined, ''])
})

it('counts bays as people do', () => {
  expect([bayName(null), bayName(0)]).toEqual(['all bays', 'bay 1'])
})
