// Pages that wait for a printer, as pictures in the window.
import { tick } from 'svelte'

const LETTER = /<symbol id="(\w+)" overflow="visible"><path d="M 0 0([^"MLHVCSQTA]*)"\/><\/symbol>/g
const RUN = /(?:<use xlink:href="#\w+" x="[^"]*" y="[^"]*" fill="#\w+" fill-rule="nonzero"\/>)+/g
const ONE = /<use xlink:href="#(\w+)" x="([^"]*)" y="([^"]*)" fill="(#\w+)" fill-rule="nonzero"\/>/g

/**
 * A page whose letters are drawn in one stroke of the pen for each run of them, where the typesetter
 * points to an outline for each letter. It looks the same and takes a third of the memory: a whole
 * pack has 160 pages of some thousand letters.
 */
export function inRuns(svg: string): string {
  const outlines: Record<string, string> = {}
  for (const [, id = '', steps = ''] of svg.matchAll(LETTER)) outlines[id] = steps.replace(/([a-zZ]) /g, '$1')
  const joined = svg.replace(RUN, (run) => {
    const letters = [...run.matchAll(ONE)]
    const inks = new Set(letters.map(([, , , , ink]) => ink))
    if (inks.size !== 1 || letters.some(([, id = '']) => outlines[id] === undefined)) return run
    const drawn = letters.map(([, id = '', x, y]) => `M${x} ${y}${outlines[id]}`)
    return `<path fill="${[...inks].join('')}" fill-rule="nonzero" d="${drawn.join('')}"/>`
  })
  return joined.includes('<use') ? joined : joined.replace(LETTER, '')
}

/**
 * A page as a picture of its own. Pages have names for their letters that others have too, and
 * styles that the window would not allow: as pictures they keep out of each other's way. Only what
 * would end the address is written otherwise, for the page is long.
 */
export const asPicture = (svg: string) =>
  `data:image/svg+xml;charset=utf-8,${inRuns(svg).replace(/%/g, '%25').replace(/#/g, '%23')}`

/** Waits until the window holds every sheet: what is not read yet would be printed as a blank. */
export async function sheetsHeld() {
  await tick()
  await Promise.all([...document.querySelectorAll<HTMLImageElement>('.paper-sheet img')].map((it) => it.decode()))
}
