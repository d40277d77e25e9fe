// The words that are looked for.
import type { Term } from '../bindings'

/** Those whose word, other words or meaning hold the text; all for no text. Those that begin with it come first. */
export function having(terms: readonly Term[], text: string): Term[] {
  const sought = text.trim().toLowerCase()
  const names = ({ word, also }: Term) => [word, ...also].map((it) => it.toLowerCase())
  const begins = (term: Term) => names(term).some((it) => it.startsWith(sought))
  const holds = (term: Term) => [...names(term), term.meaning.toLowerCase()].some((it) => it.includes(sought))
  return [...terms.filter(begins), ...terms.filter((it) => !begins(it) && holds(it))]
}
