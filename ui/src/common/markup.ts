// Markup from Rust put into an element.
import { become } from './become'

/**
 * What stood in the element and is the same in the new markup stays, so that no more is laid out and painted anew
 * than has changed; `ready` makes the new markup ready before it is compared. What is no more is let go of at once:
 * what `{@html}` has put somewhere is held by the page until its garbage is collected.
 */
export const markup = (text: string, ready: (fresh: Element) => void = () => {}) => (element: Element) => {
  const fresh = element.cloneNode(false) as Element
  fresh.innerHTML = text
  ready(fresh)
  become(element, fresh)
}
