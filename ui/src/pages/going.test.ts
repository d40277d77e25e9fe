import { expect, it } from 'vitest'
import { pages, pagesSoFar } from './going'

it('counts the pages that are made, and those of the last document', () => {
  const so = (all: number, last: number) => pagesSoFar({ at: 1, of: 9, title: 'Run sheet', pages: all, last })
  expect(so(0, 0)).toBe('No page yet.')
  expect(so(1, 1)).toBe('1 page so far.')
  expect(so(41, 12)).toBe('41 pages so far, 12 in the last document.')
  expect(pages(2)).toBe('2 pages')
})
