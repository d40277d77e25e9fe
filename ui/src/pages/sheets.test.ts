// What a printer gets is the page as it was set, with its letters joined.
import { expect, it } from 'vitest'
import { asPicture, inRuns } from './sheets'

const symbol = (id: string, steps: string) => `<symbol id="${id}" overflow="visible"><path d="M 0 0${steps}"/></symbol>`
const letter = (id: string, x: number, ink = '#000000') =>
  `<use xlink:href="#${id}" x="${x}" y="0" fill="${ink}" fill-rule="nonzero"/>`
const DEFS = `<defs>${symbol('gA', 'm 1.5 0v 17.3h -8.4Z ')}${symbol('gB', 'm 2 0q 1 2 3 4Z ')}</defs>`

it('draws the letters of a run in one path, each at its place', () => {
  const page = `<svg><g>${letter('gA', 0)}${letter('gB', 12.5)}</g><g>${letter('gB', 3, '#777777')}</g>${DEFS}</svg>`
  expect(inRuns(page)).toBe(
    '<svg><g><path fill="#000000" fill-rule="nonzero" d="M0 0m1.5 0v17.3h-8.4ZM12.5 0m2 0q1 2 3 4Z"/></g>' +
      '<g><path fill="#777777" fill-rule="nonzero" d="M3 0m2 0q1 2 3 4Z"/></g><defs></defs></svg>',
  )
})

it('leaves a run as it is that it does not understand, with all outlines', () => {
  const absolute = `<symbol id="gC" overflow="visible"><path d="M 0 0L 3 4Z "/></symbol>`
  for (const run of [
    letter('gA', 0) + letter('gC', 2),
    letter('gA', 0) + letter('gB', 2, '#ff0000'),
    letter('gUnknown', 0),
    letter('gA', 0).replace('#000000', 'url(#shade)'),
  ]) {
    const page = `<svg><g>${run}</g>${DEFS}${absolute}</svg>`
    expect(inRuns(page)).toBe(page)
  }
})

it('writes a page as an address that ends where the page ends', () => {
  const address = asPicture('<svg><a href="#top" width="50%"/>é</svg>')
  expect(address).not.toContain('#')
  expect(decodeURIComponent(address)).toBe('data:image/svg+xml;charset=utf-8,<svg><a href="#top" width="50%"/>é</svg>')
})
