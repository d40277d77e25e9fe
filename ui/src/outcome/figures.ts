// Words beside the figures; the figures themselves come written from Rust.
import type { Moved, WrittenChance, WrittenFrames, WrittenStone } from '../bindings'

/** What a figure was before the last change; nothing if that did not move it. */
export const was = (moved: readonly Moved[], what: string): string | undefined =>
  moved.find((it) => it.what === what)?.before

export function loadWords({ loads, load }: Pick<WrittenStone, 'loads' | 'load'>): string {
  if (loads === null) return 'The size of a load is not given.'
  return loads === 1 ? `1 load of ${load}` : `${loads} loads of ${load}`
}

/** Sets are told where frames come in sets. */
export function frameWords({ count, sets, short }: Pick<WrittenFrames, 'count' | 'sets' | 'short'>): string {
  const stock = short === null ? 'stock not counted' : short === 0 ? 'enough in stock' : `${short} short`
  if (sets === count) return stock
  return `${sets === 1 ? '1 set' : `${sets} sets`}; ${stock}`
}

export const chanceWords = ({ below, wished }: Pick<WrittenChance, 'below' | 'wished'>): string =>
  below ? `below the ${wished} wished for` : `wished for: ${wished}`
