import { describe, expect, it } from 'vitest'
import type { Rule } from '../bindings'
import { fieldOf, idle, keysOf, perWords, typedOf } from './rules'

const rule = (more: Partial<Rule> = {}): Rule => ({
  item: 'Spade', unit: '', per: 'people', every: '4', each: '1', spare: '0', least: '1', off: false,
  source: 'common practice', changed_here: false, changed_for_good: false, ...more,
})

describe('what goes to Rust', () => {
  it('is what differs', () => {
    expect(keysOf(typedOf(rule()), rule(), false)).toEqual([])
    expect(keysOf({ ...typedOf(rule()), each: ' 2 ' }, rule(), false)).toEqual([{ key: 'each', typed: '2' }])
    expect(keysOf({ ...typedOf(rule()), off: 'true' }, rule(), false)).toEqual([{ key: 'off', typed: 'true' }])
  })
  it('lets go of so many people when it is counted otherwise', () => {
    expect(keysOf({ ...typedOf(rule()), per: 'pair' }, rule(), false)).toEqual([
      { key: 'per', typed: 'pair' }, { key: 'every', typed: '' },
    ])
  })
  it('empties a key that is emptied, so that the table says', () => {
    expect(keysOf({ ...typedOf(rule()), least: '' }, rule(), false)).toEqual([{ key: 'least', typed: '' }])
  })
  it('is all that is shown, where what this course says shall hold for good', () => {
    const keys = keysOf(typedOf(rule({ per: 'pair', every: '' })), rule({ per: 'pair', every: '' }), true)
    expect(keys.map((it) => it.key)).toEqual(['per', 'each', 'spare', 'least', 'off'])
  })
  it('is all that is said of a new rule', () => {
    expect(keysOf(typedOf(), undefined, false)).toEqual([{ key: 'per', typed: 'group' }, { key: 'each', typed: '1' }])
  })
})

it('is refused at its field, in a course as for good', () => {
  const trouble = (key: string) => ({ code: 'no', key, what: '', cure: '' })
  expect(fieldOf(trouble('kit.rule.0.each'))).toBe('each')
  expect(fieldOf(trouble('rule.3.every'))).toBe('every')
  expect(fieldOf(trouble(''))).toBeUndefined()
  expect(fieldOf(undefined)).toBeUndefined()
})

it('stands apart when it puts nothing on the list', () => {
  const rules = [rule(), rule({ item: 'Tent' }), rule({ item: 'Pencil', off: true })]
  expect(idle(rules, [{ rule: 'Spade' }]).map((it) => [it.rule.item, it.why])).toEqual([
    ['Tent', 'not wanted on this course'], ['Pencil', 'switched off'],
  ])
})

it('counts by words a person reads, and by those of a newer program', () => {
  expect(perWords('group')).toBe('course, once')
  expect(perWords('heap')).toBe('heap')
})
