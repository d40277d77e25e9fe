// What a printer gets is the page as it was set.
import { expect, it } from 'vitest'
import { asPicture } from './sheets'

it('writes a page as an address that ends where the page ends', () => {
  const address = asPicture('<svg><a href="#top" width="50%"/>é</svg>')
  expect(address).not.toContain('#')
  expect(decodeURIComponent(address)).toBe('data:image/svg+xml;charset=utf-8,<svg><a href="#top" width="50%"/>é</svg>')
})
