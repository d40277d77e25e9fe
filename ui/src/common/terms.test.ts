// Words of the trade are found as whole words, the longest first, each once in a text.
import { describe, expect, it } from 'vitest'
import type { Term } from '../bindings'
import { known, parts } from './terms'

const term = (word: string, also: string[] = [], everyday = false): Term => ({
  word, also, everyday, meaning: `what ${word} means`, drawing: null, source: 'common practice, no source',
})
const words = known([
  term('batter'), term('batter gauge'), term('running joint'), term('through', ['through stone']), term('course', [], true),
  term('head', ['built end'], true), term('trench'),
])
const marked = (text: string) => parts(text, words).filter((it) => it.term).map((it) => [it.text, it.term?.word])

describe('words of the trade', () => {
  it.each<[string, [string, string][]]>([
    ['Batter, left face', [['Batter', 'batter']]],
    ['Hold the batter gauge plumb.', [['batter gauge', 'batter gauge']]],
    ['Throughs: two through stones', [['Throughs', 'through']]],
    ['A batter, and once more a batter', [['batter', 'batter']]],
    ['battered, unbatter, batter-like', []],
    ['The course costs GBP 12 a head; a built end is one.', [['built end', 'head']]],
    ['Trenches', [['Trenches', 'trench']]],
    ['A running joint', [['running joint', 'running joint']]],
  ])('%s', (text, found) => expect(marked(text)).toEqual(found))

  it('leave no letter of the text out', () => {
    for (const text of ['Batter', 'a batter, a trench', 'nothing here', '', 'trench batter']) {
      expect(parts(text, words).map((it) => it.text).join('')).toBe(text)
    }
  })
  it('are none before the glossary is there', () => {
    expect(parts('Batter', known([]))).toEqual([{ text: 'Batter' }])
  })
  it('may hold signs that mean something in a pattern', () => {
    expect(parts('a lift (first)', known([term('lift (first)')]))[0]).toEqual({ text: 'a ' })
  })
})
