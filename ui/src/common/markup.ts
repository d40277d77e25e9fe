// Markup from Rust put into an element.

/**
 * What stood in the element is let go of at once; what `{@html}` has put somewhere is held by the page
 * until its garbage is collected.
 */
export const markup = (text: string) => (element: Element) => {
  element.innerHTML = text
}
