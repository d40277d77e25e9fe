// A view put together from the one before and what Rust tells is other in it. What is not other stays the same
// object, so that nothing that shows it is looked at again.
import type { Reply } from './backend'
import type { Renewed, View } from './bindings'

export class Renewal {
  /** The number of the view that came last. */
  known: number | null = null
  #view: View | undefined

  taken(reply: Reply<Renewed>): Reply<View> {
    if (!reply.ok) return reply
    const { number, before, view, written, drawings } = reply.value
    const last = before === null ? undefined : this.#view
    const value = { ...last, ...view, written: { ...last?.written, ...written }, drawings: { ...last?.drawings, ...drawings } } as View
    this.known = number
    this.#view = value
    return { ok: true, value }
  }
}
