// The pace book as the window holds it: read anew after each thing that is done to it.
import type * as Backend from '../backend'
import type { Reply } from '../backend'
import type { PaceBook, Trouble } from '../bindings'
import { BookFile } from './book-file.svelte'

type Rust = Pick<typeof Backend, 'paceBook' | 'recordPace' | 'takeBackPace' | 'takeBackPaceOf'> &
  ConstructorParameters<typeof BookFile>[0]

export class OpenPaceBook {
  shown: PaceBook | undefined = $state.raw()
  trouble: Trouble | undefined = $state.raw()
  /** What was done last, as a sentence. */
  said: string = $state('')
  /** The course that shall go, while that is asked and not yet answered. */
  asking: number | undefined = $state()

  /** To and from a file. */
  file: BookFile

  #rust: Rust
  /** What was typed reaches the course before the book is asked. */
  #first: () => Promise<void>

  /** The course that is open is planned with the other courses of the book. */
  #then: () => Promise<void>

  constructor(rust: Rust, first: () => Promise<void>, then: () => Promise<void> = async () => {}) {
    this.#rust = rust
    this.#first = first
    this.#then = then
    this.file = new BookFile(rust, async (book) => {
      this.shown = book
      await this.#then()
    })
  }

  async look() {
    this.said = ''
    this.asking = undefined
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

  /** Any course of the book, by its place; the first time it is asked about. */
  async takeOut(at: number, title: string) {
    if (this.asking !== at) {
      this.asking = at
      return
    }
    this.asking = undefined
    await this.#ask(() => this.#rust.takeBackPaceOf(at))
    await this.#then()
    this.said = this.trouble ? '' : `Taken out: ${title}. To have it back, open that course and record it again.`
  }

  async #ask(question: () => Promise<Reply<PaceBook>>) {
    await this.#first()
    const reply = await question()
    this.trouble = reply.ok ? undefined : reply.trouble
    if (reply.ok) this.shown = reply.value
  }
}
