// Why figures are what they are: asked of Rust when one is opened, and again when the course changes.
import { tick } from 'svelte'
import type { Reply } from '../backend'
import type { Reason } from '../bindings'

type Rust = { reasons: () => Promise<Reply<Reason[]>> }

export class Reasons {
  /** Which figure, and where it was asked: one figure may stand at two places. */
  open: { id: string; at: string } | undefined = $state.raw()
  #all: Reason[] | undefined = $state.raw()
  readonly reason = $derived(this.#all?.find((it) => it.id === this.open?.id))
  /** They were asked for, and there is none of this figure. */
  readonly none = $derived(this.open !== undefined && this.#all !== undefined && this.reason === undefined)
  /** Said aloud when a reason opens, and when its figure moves. */
  readonly said = $derived(this.reason ? `Why ${this.reason.title}, ${this.reason.figure}: ${this.reason.sentences[0] ?? ''}` : '')

  #rust: Rust

  constructor(rust: Rust) {
    this.#rust = rust
  }

  isOpen = (at: string) => this.open?.at === at

  async press(id: string, at: string) {
    if (this.isOpen(at)) return this.close()
    this.open = { id, at }
    await this.#ask()
    await tick()
    // It may open below what is in sight.
    document.getElementById(`reason-${at}`)?.scrollIntoView({ block: 'nearest' })
  }

  /** Another course, or the same with other figures. */
  courseChanged() {
    if (this.open) void this.#ask()
  }

  async #ask() {
    const reply = await this.#rust.reasons()
    this.#all = reply.ok ? reply.value : []
  }

  /** Puts the reason away; whoever reads by keys is back at its button. */
  async close() {
    const at = this.open?.at
    this.open = undefined
    this.#all = undefined
    await tick()
    document.getElementById(`why-${at}`)?.focus()
  }
}
