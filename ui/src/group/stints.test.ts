// A student is carried to another, never to themselves, and what came of it is said as it is.
import { describe, expect, it } from 'vitest'
import { others, outcomeOf, wishKey, type Pair } from './stints'

const pair = (number: number, ...names: string[]): Pair => ({
  number, from: '', to: '', length: '', who: names.map((name) => ({ name, words: name })),
})
const pairs = [pair(1, 'Ada', 'Ben'), pair(2, 'Cleo', 'Dan')]
const planned = (...stints: string[][]) => ({
  plan: { unmet: [{ wish: null, text: '' }], stints: stints.map((who) => who.map((name) => ({ name }))) },
  written: { running: { unmet: ['Ada would like to build with Dan, and does not.'] } },
})

describe('a key', () => {
  it('leads from one to the next, over oneself', () => {
    expect(others(pairs, 'Ben', undefined, 'ArrowDown')).toBe('Cleo')
    expect(others(pairs, 'Ben', 'Cleo', 'ArrowUp')).toBe('Ada')
    expect(others(pairs, 'Ben', 'Ada', 'ArrowDown')).toBe('Cleo')
    expect(others(pairs, 'Ben', 'Cleo', 'Tab')).toBeUndefined()
  })

  it('stays at the ends', () => {
    expect(others(pairs, 'Ben', 'Dan', 'ArrowDown')).toBe('Dan')
    expect(others(pairs, 'Ada', undefined, 'ArrowUp')).toBeUndefined()
  })
})

it('a wish is kept with the student it is of', () => {
  expect(wishKey(['Ada', 'Ben'], 'Ben')).toBe('student.1.with')
})

it('says what came of it', () => {
  expect(outcomeOf(planned(['Ben', 'Cleo'], ['Ada', 'Dan']), 'Ada', 'Dan')).toBe('Ada builds with Dan now, in stint 2.')
  expect(outcomeOf(planned(['Ada', 'Ben'], ['Cleo', 'Dan']), 'Ada', 'Dan')).toBe('Ada would like to build with Dan, and does not.')
})
