// Words beside the figures; the figures themselves come written from Rust.
import type { Moved, WrittenChance, WrittenFrames, WrittenStone } from '../bindings'

/** What a figure was before the last change; nothing if that did not move it. */
export const was = (moved: readonly Moved[], what: string): string | undefined =>
  moved.find((it) => it.what === what)?.before

export function loadWords({ loads, load }: Pick<WrittenStone, 'loads' | 'load'>): string {
  if (loads === null) return 'The size of a load is not given.'
  return loads === 1 ? `1 load of ${load}` : `${loads} loads of ${load}`
}

export function frameWords({ sets, short }: Pick<WrittenFrames, 'sets' | 'short'>): string {
  const brought = sets === 1 ? '1 set' : `${sets} sets`
  if (short === null) return `${brought}; stock not counted`
  return short === 0 ? `${brought}; enough in stock` : `${brought}; ${short} short`
}

export const chanceWords = ({ below, wished }: Pick<WrittenChance, 'below' | 'wished'>): string =>
  below ? `below the ${wished} wished for` : `wished for: ${wished}`
