// Looking for a word of the trade.
import { expect, it } from 'vitest'
import type { Term } from '../bindings'
import { having } from './having'

const term = (word: string, also: string[], meaning: string): Term => ({
  word, also, meaning, everyday: false, drawing: null, source: '',
})
const terms = [
  term('batter', [], 'The lean of a face.'), term('face', [], 'The outside.'), term('through', ['through stone'], 'It ties both faces.'),
]
const found = (text: string) => having(terms, text).map((it) => it.word)

it('finds by word, other word and meaning, what begins so first', () => {
  expect(found('')).toEqual(['batter', 'face', 'through'])
  expect(found(' FACE ')).toEqual(['face', 'batter', 'through'])
  expect(found('through st')).toEqual(['through'])
  expect(found('none of these')).toEqual([])
})
