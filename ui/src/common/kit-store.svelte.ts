// The kit store as the window holds it: read anew after each thing that is done to it.
import type * as Backend from '../backend'
import type { Reply } from '../backend'
import type { KitListPreview, KitStore, Trouble, View } from '../bindings'
import type { Course } from './course.svelte'

type Rust = Pick<typeof Backend, 'kitStore'>

export class OpenStore {
  shown: KitStore | undefined = $state.raw()
  /** What the list that was looked at last would change. */
  preview: KitListPreview | undefined = $state.raw()
  /** Why it could not be read. */
  trouble: Trouble | undefined = $state.raw()

  #rust: Rust
  #course: Course

  constructor(rust: Rust, course: Course) {
    this.#rust = rust
    this.#course = course
  }

  async look() {
    const store = await this.#rust.kitStore()
    this.trouble = store.ok ? undefined : store.trouble
    if (store.ok) this.shown = store.value
  }

  /** Does something to it; what was refused is told to who asked. */
  async change(question: () => Promise<Reply<View | null>>): Promise<Trouble | undefined> {
    const refusal = await this.#course.tell(question)
    await this.look()
    return refusal
  }
}
