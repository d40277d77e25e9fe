// Where words of the trade stand in a text.
import type { Term } from '../bindings'

export type Part = { text: string; term?: Term }

/** The words to look for with what each means, and the pattern that finds them. */
export type Known = { terms: ReadonlyMap<string, Term>; pattern: RegExp | undefined }

const forms = ({ word, also, everyday }: Term): string[] => (everyday ? also : [word, ...also])
const quoted = (word: string) => word.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')

/** The longest first, so that `running joint` is not taken for a joint. */
export function known(terms: readonly Term[]): Known {
  const all = new Map(terms.flatMap((term) => forms(term).map((form) => [form.toLowerCase(), term] as const)))
  const words = [...all.keys()].sort((one, other) => other.length - one.length).map(quoted)
  if (words.length === 0) return { terms: all, pattern: undefined }
  // A whole word, or its plural; never a part of one, nor of one with a hyphen.
  return { terms: all, pattern: new RegExp(`(?<![\\p{L}\\d-])(${words.join('|')})(?:e?s)?(?![\\p{L}\\d-])`, 'giu') }
}

/** A text in parts; of each word of the trade only the first place is marked. */
export function parts(text: string, { terms, pattern }: Known): Part[] {
  if (!pattern) return [{ text }]
  const found: Part[] = []
  const marked = new Set<Term>()
  let from = 0
  for (const match of text.matchAll(pattern)) {
    const term = terms.get((match[1] ?? '').toLowerCase())
    if (!term || marked.has(term)) continue
    marked.add(term)
    if (from < match.index) found.push({ text: text.slice(from, match.index) })
    found.push({ text: match[0], term })
    from = match.index + match[0].length
  }
  if (from < text.length || found.length === 0) found.push({ text: text.slice(from) })
  return found
}
