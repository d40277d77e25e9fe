// A list of people that was pasted or dropped: looked at before anything changes, then taken in.
import type * as Backend from '../backend'
import type { Reply } from '../backend'
import type { RosterPreview, Trouble, View } from '../bindings'

type Rust = Pick<typeof Backend, 'lookAtRoster' | 'takeInRoster'>
type Course = { tell: (question: () => Promise<Reply<View | null>>) => Promise<Trouble | undefined> }

export class RosterPaste {
  text = $state('')
  preview: RosterPreview | undefined = $state.raw()
  trouble: Trouble | undefined = $state.raw()
  /** What was done last, as a sentence. */
  said = $state('')

  #rust: Rust
  #course: Course

  constructor(rust: Rust, course: Course) {
    this.#rust = rust
    this.#course = course
  }

  type(text: string) {
    this.text = text
    this.preview = undefined
    this.trouble = undefined
    this.said = ''
  }

  async look() {
    const { text } = this
    const reply = await this.#rust.lookAtRoster(text)
    // Other lines may stand there by now.
    if (text !== this.text) return
    this.trouble = reply.ok ? undefined : reply.trouble
    this.preview = reply.ok ? reply.value : undefined
  }

  /** `whole`: who is not in the list goes. */
  async takeIn(whole: boolean) {
    this.trouble = await this.#course.tell(() => this.#rust.takeInRoster(this.text, whole))
    if (this.trouble) return
    this.type('')
    this.said = 'The list has been taken in. Undo takes it back.'
  }

  /** Another course has another group. */
  forget() {
    this.type('')
  }
}
