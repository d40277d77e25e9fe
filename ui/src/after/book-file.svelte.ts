// The pace book's file as the window holds it: what it would change, until it is taken in or left.
import type * as Backend from '../backend'
import type { PaceBook, PacePreview, Trouble } from '../bindings'

type Rust = Pick<typeof Backend, 'lookAtPaceFile' | 'takeInPaceFile' | 'exportPaceBook'>

export class BookFile {
  /** What the file that was looked at last would change. */
  preview: PacePreview | undefined = $state.raw()
  trouble: Trouble | undefined = $state.raw()
  /** What was done last, as a sentence. */
  told: string = $state('')

  #rust: Rust
  /** The book as it is after a file was taken in. */
  #then: (book: PaceBook) => Promise<void>

  constructor(rust: Rust, then: (book: PaceBook) => Promise<void>) {
    this.#rust = rust
    this.#then = then
  }

  async look() {
    const reply = await this.#rust.lookAtPaceFile()
    this.told = ''
    this.trouble = reply.ok ? undefined : reply.trouble
    this.preview = reply.ok ? (reply.value ?? undefined) : undefined
  }

  /** A file that was dropped. */
  dropped(preview: PacePreview) {
    this.leave()
    this.preview = preview
  }

  async takeIn() {
    const name = this.preview?.file
    const reply = await this.#rust.takeInPaceFile()
    this.leave()
    if (!reply.ok) {
      this.trouble = reply.trouble
      return
    }
    await this.#then(reply.value)
    this.told = `${name} has been taken in: your next courses are planned with it.`
  }

  leave() {
    this.preview = undefined
    this.trouble = undefined
    this.told = ''
  }

  async write() {
    const reply = await this.#rust.exportPaceBook()
    this.trouble = reply.ok ? undefined : reply.trouble
    this.told = reply.ok && reply.value ? `Written to ${reply.value}.` : ''
  }
}
