// A view put together from the one before and what Rust tells is other in it. What is not other stays the same
// object, so that nothing that shows it is looked at again. A course asks one question at a time (`Course`), so no
// answer comes in before the one it changes.
import type { Reply } from './backend'
import type { Difference, Renewed, View } from './bindings'

export class Renewal {
  /** The number of the view that came last. */
  known: number | null = null
  #view: View | undefined

  taken(reply: Reply<Renewed>): Reply<View> {
    if (!reply.ok) return reply
    const { number, whole, changes } = reply.value
    const value = whole ?? (renewed(this.#view, changes) as View)
    this.known = number
    this.#view = value
    return { ok: true, value }
  }
}

type Parts = Record<string, unknown>

/** Each record and list that holds something other is copied once, however much in it is. */
function renewed(value: unknown, changes: Difference[]): unknown {
  const copies = new Set<unknown>()
  const copied = (part: unknown) => {
    if (copies.has(part)) return part as Parts
    const copy = (Array.isArray(part) ? [...(part as unknown[])] : { ...(part as Parts) }) as Parts
    copies.add(copy)
    return copy
  }
  const all = { value }
  for (const { at, now } of changes) {
    let [inside, name]: [Parts, string] = [all, 'value']
    for (const next of at) [inside, name] = [(inside[name] = copied(inside[name])), next]
    inside[name] = now
  }
  return all.value
}
