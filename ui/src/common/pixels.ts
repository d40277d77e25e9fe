// Where things lie on the screen: the only sums of the window, in pixels and places on a drawing.

export type Place = readonly [x: number, y: number]

/** The part of a drawing that is shown: left, top, width and height in its millimetres. */
export type Part = readonly [left: number, top: number, width: number, height: number]

/** A drawing's size goes in steps of so many millimetres. */
const STEP = 10

/**
 * The same part with a margin that makes its size whole steps. A drawing grows and shrinks a little with each letter that
 * is typed: its words keep their size on the screen meanwhile, and the engine need not make its typefaces anew for each
 * size there ever was, and keep them.
 */
export function inSteps([left, top, width, height]: Part): Part {
  const [wide, high] = [width, height].map((it) => Math.ceil(it / STEP) * STEP) as [number, number]
  return [left - (wide - width) / 2, top - (high - height) / 2, wide, high]
}

/** How a part of a drawing lies in its box: pixels for a millimetre, and where its corner is. */
export type Fit = { scale: number; left: number; top: number }

/** As large as the box allows with nothing cut off, in its middle: as a browser fits an SVG. */
export function fit([, , width, height]: Part, box: Place): Fit {
  const scale = Math.min(box[0] / width, box[1] / height)
  return { scale, left: (box[0] - width * scale) / 2, top: (box[1] - height * scale) / 2 }
}

/** Where a place of the drawing lies in the box, in pixels. */
export const inBox = ({ scale, left, top }: Fit, part: Part, at: Place): Place => [
  left + (at[0] - part[0]) * scale,
  top + (at[1] - part[1]) * scale,
]

/** Which of some places is nearest to one. */
export function nearest(places: readonly number[], place: number): number {
  const far = (at: number) => Math.abs((places[at] ?? Infinity) - place)
  return places.reduce((best, _, at) => (far(at) < far(best) ? at : best), 0)
}

/** Held between 0 and the last. */
export const within = (at: number, last: number) => Math.min(Math.max(at, 0), Math.max(last, 0))

/** A pointer that has moved less than this has only pressed. */
const PRESS = 4
export const hasMoved = ([x, y]: Place) => PRESS < Math.hypot(x, y)

/** At least so large that a finger finds it. */
export const atLeast = (pixels: number, least: number) => Math.max(pixels, least)

/** Something that lies on the row of a day, from one place to another. */
type Entry = { id: string; day: number; from: number; to: number }

/**
 * The entries so near the one before that a finger could not tell them apart: they are taken hold of below their row.
 * A finger needs so much of the drawing.
 */
export function crowded(entries: readonly Entry[], finger: number): ReadonlySet<string> {
  const below = new Set<string>()
  let [day, until] = [-1, 0]
  for (const entry of entries.toSorted((a, b) => a.day - b.day || a.from - b.from)) {
    const first = entry.day !== day
    day = entry.day
    if (!first && entry.from < until) below.add(entry.id)
    else until = Math.max(entry.to, entry.from + finger)
  }
  return below
}
