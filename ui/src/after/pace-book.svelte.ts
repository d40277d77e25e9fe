// The pace book as the window holds it: read anew after each thing that is done to it.
import type * as Backend from '../backend'
import type { Reply } from '../backend'
import type { PaceBook, Trouble } from '../bindings'

type Rust = Pick<typeof Backend, 'paceBook' | 'recordPace' | 'takeBackPace'>

export class OpenPaceBook {
  shown: PaceBook | undefined = $state.raw()
  trouble: Trouble | undefined = $state.raw()
  /** What was done last, as a sentence. */
  said: string = $state('')

  #rust: Rust
  /** What was typed reaches the course before the book is asked. */
  #first: () => Promise<void>

  constructor(rust: Rust, first: () => Promise<void>) {
    this.#rust = rust
    this.#first = first
  }

  async look() {
    this.said = ''
    await this.#ask(this.#rust.paceBook)
  }

  async record() {
    await this.#ask(this.#rust.recordPace)
    this.said = this.trouble ? '' : 'Recorded: your next courses are planned with it.'
  }

  async takeBack() {
    await this.#ask(this.#rust.takeBackPace)
    if (this.trouble) this.said = ''
    else this.said = this.shown?.recorded ? 'Taken back: what was recorded before counts again.' : 'Taken back: this course is not in the book.'
  }

  async #ask(question: () => Promise<Reply<PaceBook>>) {
    await this.#first()
    const reply = await question()
    this.trouble = reply.ok ? undefined : reply.trouble
    if (reply.ok) this.shown = reply.value
  }
}
