// A change to the course file in a person's words: what undoing takes back.
import type { Changed } from '../bindings'
import { LABELS } from '../common/labels'

/** Longer words are cut: a name has to fit on a button. */
const LONGEST = 24

/** As `height 1.07 m to 1.2 m`, `day 3 added`, `vehicle 1, payload taken out`. */
export function nameOf(changes: readonly Changed[]): string {
  const [first] = changes
  if (!first) return 'a remark in the file'
  // One report is several keys, and may write an open length down too.
  if (changes.some(({ key }) => key.startsWith('progress.'))) return 'what was told of the day'
  const row = rowOf(changes)
  if (row) return row
  const more = changes.length - 1
  return more === 0 ? one(first) : `${one(first)} and ${more} more`
}

/** Where all of them are of one row of a table that came or went. */
function rowOf(changes: readonly Changed[]): string | undefined {
  const rows = changes.map(({ key }) => /^[\w.]*\.\d+(?=\.)/.exec(key)?.[0])
  const [row] = rows.toSorted((a, b) => (a?.length ?? 0) - (b?.length ?? 0))
  if (!row || !changes.every(({ key }) => key.startsWith(`${row}.`))) return
  if (changes.every(({ from }) => from === null)) return `${inWords(row)} added`
  if (changes.every(({ to }) => to === null)) return `${inWords(row)} taken out`
}

function one({ key, from, to }: Changed): string {
  const name = label(key)
  if (to === null) return `${name} taken out`
  if (from === null) return `${name} set to ${short(to)}`
  return `${name} ${short(from)} to ${short(to)}`
}

/** Labels begin with a capital, unless they are a name. */
function label(key: string): string {
  const known = LABELS.get(key)
  return known ? known.charAt(0).toLowerCase() + known.slice(1) : inWords(key)
}

/** A key as it would be said, rows counted from 1: `day.0.start` is `day 1, start`. */
function inWords(key: string): string {
  const rows = key.replace(/\.(\d+)/g, (_, at) => ` ${Number(at) + 1}`)
  return rows.replaceAll('.', ', ').replaceAll(/[_-]/g, ' ')
}

const short = (words: string) => (words.length <= LONGEST ? words : `${words.slice(0, LONGEST - 1).trimEnd()}...`)
