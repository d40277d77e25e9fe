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
    const value = whole ?? (changes.reduce<unknown>(changed, this.#view) as View)
    this.known = number
    this.#view = value
    return { ok: true, value }
  }
}

function changed(value: unknown, { at, now }: Difference): unknown {
  const [name, ...inside] = at
  if (name === undefined) return now
  const copy = (Array.isArray(value) ? [...(value as unknown[])] : { ...(value as object) }) as Record<string, unknown>
  copy[name] = changed(copy[name], { at: inside, now })
  return copy
}
