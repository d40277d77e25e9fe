// From a pointer or a key to one of the places a handle can be moved to. Which places there are,
// and what each of them means, comes from Rust.
import type { Handle } from '../bindings'
import { nearest, type Part, type Place, within } from '../common/pixels'

/** The whole of a drawing, as its SVG says. */
export function wholeOf(svg: string): Part {
  const [, all = ''] = /viewBox="([^"]*)"/.exec(svg) ?? []
  const [left = 0, top = 0, width = 1, height = 1] = all.split(' ').map(Number)
  return [left, top, width, height]
}

/** The drawing with another part of it shown. */
export const withPart = (svg: string, part: Part) => svg.replace(/viewBox="[^"]*"/, `viewBox="${part.join(' ')}"`)

/** The stop a handle is dragged to, by so many pixels from where it was taken hold of. */
export function draggedTo(handle: Handle, by: Place, pixelsPerMm: number): number {
  const from = handle.stops[handle.now]?.place ?? 0
  return nearest(handle.stops.map((it) => it.place), from + by[handle.across ? 0 : 1] / pixelsPerMm)
}

/** Where a handle lies at one of its stops. */
export function placeAt(handle: Handle, at: number): Place {
  const place = handle.stops[at]?.place ?? 0
  return handle.across ? [place, handle.at[1]] : [handle.at[0], place]
}

const STEPS: Record<string, number> = {
  ArrowRight: 1, ArrowUp: 1, ArrowLeft: -1, ArrowDown: -1, PageUp: 5, PageDown: -5,
}

/** The stop a key leads to from another; nothing for a key that moves no handle. */
export function steppedTo(key: string, from: number, stops: number): number | undefined {
  if (key === 'Home') return 0
  if (key === 'End') return stops - 1
  const by = STEPS[key]
  return by === undefined ? undefined : within(from + by, stops - 1)
}

/**
 * While a handle is dragged its drawing is made anew, at another scale as it may be: the part of
 * it that lies on the screen as the drawing did when the handle was taken hold of.
 */
export function held(part: Part, before: Handle, after: Handle): Part {
  const times = after.mm_per_m / before.mm_per_m
  return [
    after.fixed[0] + (part[0] - before.fixed[0]) * times,
    after.fixed[1] + (part[1] - before.fixed[1]) * times,
    part[2] * times,
    part[3] * times,
  ]
}
