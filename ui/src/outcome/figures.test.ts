// Words beside the figures.
import { expect, test } from 'vitest'
import { frameWords } from './figures'

test.each([
  { count: 4, sets: 2, short: 0, said: '2 sets; enough in stock' },
  { count: 3, sets: 1, short: 1, said: '1 set; 1 short' },
  { count: 18, sets: 18, short: null, said: 'stock not counted' },
  { count: 5, sets: 5, short: 2, said: '2 short' },
])('frames that come one by one are not told in sets: $said', ({ said, ...frames }) => {
  expect(frameWords(frames)).toBe(said)
})
