// Pages that wait for a printer, as pictures in the window.
import { tick } from 'svelte'

/**
 * A page as a picture of its own. Pages have names for their letters that others have too, and
 * styles that the window would not allow: as pictures they keep out of each other's way. Only what
 * would end the address is written otherwise, for the page is long.
 */
export const asPicture = (svg: string) =>
  `data:image/svg+xml;charset=utf-8,${svg.replace(/%/g, '%25').replace(/#/g, '%23')}`

/** Waits until the window holds every sheet: what is not read yet would be printed as a blank. */
export async function sheetsHeld() {
  await tick()
  await Promise.all([...document.querySelectorAll<HTMLImageElement>('.paper-sheet img')].map((it) => it.decode()))
}
