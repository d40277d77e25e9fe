// A page's links become places, and nothing of it can be followed.
import { expect, it } from 'vitest'
import { madeReady, placeOf, placesIn } from './places'

const link = (word: string) =>
  `<a transform="translate(1 2)" href="place:${word}" xlink:href="place:${word}"><rect width="3" height="4" fill="transparent"/></a>`
const page = (...words: string[]) => `<svg class="typst-doc" style="overflow: visible">${words.map(link).join('')}</svg>`

it('names each place once, in the order of the page, and none it does not know', () => {
  expect(placesIn(page('wall', 'frames', 'wall', 'nowhere', 'lessons'))).toEqual(['wall', 'frames', 'lessons'])
  expect(placesIn('<svg></svg>')).toEqual([])
})

it('leads lessons to their questions among the days', () => {
  expect(placeOf('lessons')).toEqual({ step: 'days', name: 'Lessons', focus: 'lessons-open' })
  expect(placeOf('venue')).toMatchObject({ step: 'venue', name: 'Course' })
  expect(placeOf('nowhere')).toBeUndefined()
})

it('takes addresses and styles out and says where a part leads', () => {
  const ready = madeReady(page('wall', 'nowhere'))
  expect(ready).not.toMatch(/href|style=/)
  expect(ready).toContain('<a transform="translate(1 2)" data-place="wall"><title>Figures from Wall: go there</title><rect')
  expect(ready).toContain('<a transform="translate(1 2)"><rect')
})

it('leaves what points into the page itself', () => {
  const glyph = '<svg><use xlink:href="#g1"/><image xlink:href="data:image/svg+xml;base64,AA"/></svg>'
  expect(madeReady(glyph)).toBe(glyph)
})
