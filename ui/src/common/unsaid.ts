// What is wrong with what stands in a field, kept back while a person may still be typing there.
import type { Trouble } from '../bindings'

/** A person who pauses so long in a field hears what is wrong with what stands there. */
export const REFUSAL_MS = 500

export class Unsaid {
  #held: { key: string; trouble: Trouble; timer: ReturnType<typeof setTimeout> } | undefined
  #say: (key: string, trouble: Trouble) => void

  constructor(say: (key: string, trouble: Trouble) => void) {
    this.#say = say
  }

  /** Said after a pause, unless it is let go of before. */
  later(key: string, trouble: Trouble) {
    this.letGo()
    this.#held = { key, trouble, timer: setTimeout(() => this.now(), REFUSAL_MS) }
  }

  /** Said now, if there is anything. */
  now() {
    const held = this.#held
    this.letGo()
    if (held) this.#say(held.key, held.trouble)
  }

  letGo() {
    clearTimeout(this.#held?.timer)
    this.#held = undefined
  }
}
