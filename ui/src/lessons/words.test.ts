import { expect, it } from 'vitest'
import { asLines, lineIn, listOf, mark, placeOf, standing, ticked, whenOf, whenWords } from './words'

it('takes lines as a list and leaves empty ones out', () => {
  expect(listOf('  Bucket \n\n Tape\n')).toEqual(['Bucket', 'Tape'])
  expect(listOf('')).toEqual([])
  expect(asLines(['a', 'b'])).toBe('a\nb')
})

it.each([
  [{ part: 'body', line: 3 }, 'Line 3 of the text'],
  [{ part: 'minutes', line: 5 }, 'Minutes (line 5 of the file)'],
  [{ part: '', line: 1 }, 'Line 1 of the file'],
])('says where a fault lies', (fault, words) => {
  expect(placeOf(fault)).toBe(words)
})

it('says whose a lesson is', () => {
  expect(standing({ whose: 'built-in', saved: true })).toBe('The built-in lesson')
  expect(standing({ whose: 'replaces', saved: false })).toContain('not saved')
  expect(standing({ whose: 'new', saved: false })).toContain('not saved')
  expect(mark({ whose: 'built-in' })).toBe('')
  expect(mark({ whose: 'own' })).toBe('your own')
})

it('keeps ticked words in the order of all, and words nobody knows', () => {
  expect(ticked(['c', 'x'], 'a', true, ['a', 'b', 'c'])).toEqual(['a', 'c', 'x'])
  expect(ticked(['a', 'c', 'x'], 'c', false, ['a', 'b', 'c'])).toEqual(['a', 'x'])
})

it('is taught where a course asks for it when nothing is ticked', () => {
  expect(whenOf([])).toEqual(['asked'])
  expect(whenOf(['always'])).toEqual(['always'])
  expect(whenWords([], [])).toBe('only where a course asks for it')
  expect(whenWords(['cold', 'dark'], [['cold', 'where frost is likely']])).toBe('where frost is likely, or dark')
})

it('finds a line in a text', () => {
  expect(lineIn('one\ntwo\nthree', 2)).toEqual([4, 7])
  expect(lineIn('one', 9)).toEqual([3, 3])
})
