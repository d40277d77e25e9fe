// Lists of names in the course file, as one line of text; rows of a list, by their place.

/** The names of a list. */
export const namesIn = (text: string | undefined): string[] =>
  (text ?? '').split(',').map((name) => name.trim()).filter(Boolean)

/** The list with a name in it, or without. */
export function withName(text: string | undefined, name: string, there: boolean): string {
  const others = namesIn(text).filter((it) => it !== name)
  return (there ? [...others, name] : others).join(', ')
}

/** The places of the rows of a list that the file holds, in order: `rowsOf(values, 'day.0.rain')`. */
export function rowsOf(values: Record<string, string>, list: string): number[] {
  const found = new Set<number>()
  for (const key of Object.keys(values)) {
    const [at = ''] = key.startsWith(`${list}.`) ? key.slice(list.length + 1).split('.') : []
    if (/^\d+$/.test(at)) found.add(Number(at))
  }
  return [...found].sort((one, other) => (one < other ? -1 : 1))
}

/** The first of a long list, and how many more there are. */
export function first<T>(all: readonly T[], most: number): { shown: readonly T[]; more: string } {
  const rest = all.slice(most).length
  return { shown: all.slice(0, most), more: rest === 0 ? '' : `and ${rest} more` }
}
