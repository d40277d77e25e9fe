// How many pages there are, in words.
import type { Printing } from '../bindings'

export const pages = (count: number) => (count === 1 ? '1 page' : `${count} pages`)

/** A document is made as a whole, so that its pages are known when the next one begins. */
export function pagesSoFar({ pages: all, last }: Printing): string {
  if (all === 0) return 'No page yet.'
  return `${pages(all)} so far${last === all ? '' : `, ${last} in the last document`}.`
}
