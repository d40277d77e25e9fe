// What became of each thing that went out, as it is typed, and what counting it home came to.
import type { BookedItem, CountedHome } from '../bindings'

export type Fate = 'back' | 'care' | 'broken' | 'used_up' | 'lost'
export type Fates = Record<Fate, string>

export const FATES: readonly (readonly [fate: Fate, head: string])[] = [
  ['back', 'Back'], ['care', 'Needs care'], ['broken', 'Broken'], ['used_up', 'Used up'], ['lost', 'Lost'],
]

/** All came back as they went, until something else is typed. */
export const allBack = (count: number): Fates => ({ back: String(count), care: '', broken: '', used_up: '', lost: '' })

/** What is left to come back as it went; none where that is not told by whole numbers. */
export function stillBack(went: number, { care, broken, used_up, lost }: Fates): string | undefined {
  const others = [care, broken, used_up, lost].map((typed) => typed.trim()).filter((typed) => typed !== '')
  if (!others.every((typed) => /^\d+$/.test(typed))) return undefined
  const back = others.reduce((left, typed) => left - Number(typed), went)
  return 0 <= back ? String(back) : undefined
}

const named = (items: readonly BookedItem[]) => items.map(({ item, count }) => `${count} ${item}`).join(', ')

/** What counting home came to, one sentence each. */
export function told({ uncounted, not_in_store }: Pick<CountedHome, 'uncounted' | 'not_in_store'>): string[] {
  return [
    'Counted home: the store has followed, and the course holds nothing any more.',
    uncounted.length === 0 ? '' : `Not counted, and left in the store as they were: ${named(uncounted)}.`,
    not_in_store.length === 0 ? '' : `More than the store holds, so it knows nothing of these: ${named(not_in_store)}.`,
  ].filter(Boolean)
}
