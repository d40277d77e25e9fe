// The lots of the store as rows: in which order, under which id, and which of them hold some words.
import type { Lot, LotTyped } from '../bindings'

export type Row = { id: string; lot: Lot }

/** So many rows are shown at once, and so many more each time. */
export const AT_ONCE = 100
/** From so many on there is a box to find one by. */
export const MANY = 12

export const NONE: LotTyped = { item: '', unit: '', owner: '', good: '', care: '', broken: '', mass: '', note: '' }

const nameOf = ({ item, owner }: Pick<Lot, 'item' | 'owner'>) => `${item}\n${owner}`

/** A lot as its fields show it: no count is an empty field. */
export function typedOf(lot: Lot): LotTyped {
  const count = (number: number) => (number === 0 ? '' : String(number))
  return { ...lot, good: count(lot.good), care: count(lot.care), broken: count(lot.broken) }
}

/**
 * The rows for newer lots, each lot under the id it had. As the store has them; but one that was added
 * comes first, where it was typed, and one that was renamed stays where it is with the keyboard in it.
 */
export function rowsOf(before: readonly Row[], lots: readonly Lot[], newId: () => string): Row[] {
  const found = new Map(lots.map((lot) => [nameOf(lot), lot]))
  const ids = new Map(before.map((row) => [nameOf(row.lot), row.id]))
  const added = lots.filter((lot) => !ids.has(nameOf(lot)))
  const gone = before.filter((row) => !found.has(nameOf(row.lot)))
  const [one, ...more] = added
  if (before.length === 0 || more.length !== 0) {
    return lots.map((lot) => ({ id: ids.get(nameOf(lot)) ?? newId(), lot }))
  }
  const renamed = gone.length === 1 ? one : undefined
  const kept = before.flatMap((row) => {
    const lot = found.get(nameOf(row.lot)) ?? renamed
    return lot ? [{ id: row.id, lot }] : []
  })
  return one && !renamed ? [{ id: newId(), lot: one }, ...kept] : kept
}

/** Rows that hold every word, in item, owner or note. */
export function holding(rows: readonly Row[], words: string): readonly Row[] {
  const wanted = words.toLowerCase().split(/\s+/).filter(Boolean)
  if (wanted.length === 0) return rows
  return rows.filter(({ lot }) => {
    const text = `${lot.item} ${lot.owner} ${lot.note}`.toLowerCase()
    return wanted.every((word) => text.includes(word))
  })
}

/** The rows in the order of the lots. */
export function inOrder(rows: readonly Row[], lots: readonly Lot[]): readonly Row[] {
  const place = new Map(lots.map((lot, at) => [nameOf(lot), at]))
  const at = ({ lot }: Row) => place.get(nameOf(lot)) ?? 0
  return [...rows].sort((one, other) => (at(one) < at(other) ? -1 : 1))
}
