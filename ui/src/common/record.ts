// Records taken apart and put together, for state that is replaced and never changed.

/** The record itself where it has no such key: what shows it is not looked at again. */
export function without<T>(record: Record<string, T>, key: string): Record<string, T> {
  return key in record ? Object.fromEntries(Object.entries(record).filter(([it]) => it !== key)) : record
}

/** The rows under one heading each, headings in the order they first come. */
export function grouped<T>(rows: readonly T[], heading: (row: T) => string): [string, T[]][] {
  const groups = new Map<string, T[]>()
  for (const row of rows) groups.set(heading(row), [...(groups.get(heading(row)) ?? []), row])
  return [...groups]
}
