// The list of courses: what there is to open, and how ready each is, worked out one by one.
import { tick } from 'svelte'
import type { Reply } from '../backend'
import type { Readiness, Trouble, View, YourCourses } from '../bindings'
import { Beginning, type BeginRust } from './beginning.svelte'

type Put = (question: () => Promise<Reply<View | null>>) => Promise<void>
type Rust = BeginRust & {
  yourCourses: () => Promise<Reply<YourCourses>>
  courseReadiness: (path: string) => Promise<Reply<Readiness>>
  forgetCourse: (path: string) => Promise<Reply<YourCourses>>
  openCourse: (path: string) => Promise<Reply<View | null>>
  openExample: (name: string) => Promise<Reply<View | null>>
  courseAgain: (path: string, first: string) => Promise<Reply<View | null>>
}

export class Courses {
  /** The list lies in front of the open course. */
  shown = $state(false)
  at: 'list' | 'begin' = $state('list')
  /** A course was opened that one can go back to. */
  back = $state(false)
  all: YourCourses | undefined = $state.raw()
  trouble: Trouble | undefined = $state.raw()
  /** By path; nothing for what is still being worked out. */
  readiness: Record<string, Readiness> = $state.raw({})
  /** Why one of them has no plan, by path. */
  unplanned: Record<string, Trouble> = $state.raw({})
  readonly beginning: Beginning

  #rust: Rust
  #put: Put
  /** Only the newest round of asking goes on. */
  #round = 0

  /** `put` shows another course, where a question brings one. */
  constructor(rust: Rust, put: Put) {
    this.#rust = rust
    this.#put = async (question) => {
      await put(question)
      if (!this.shown) await toPlace()
    }
    this.beginning = new Beginning(rust, this.#put)
  }

  /** Whether nothing of the person's own lies on the desk. */
  async look(): Promise<boolean> {
    const round = ++this.#round
    this.#take(await this.#rust.yourCourses())
    void this.#workOut(round)
    return this.all?.start_here ?? false
  }

  async show(at: 'list' | 'begin') {
    this.shown = true
    this.at = at
    if (at === 'begin') void this.beginning.look()
    await toPlace()
    await this.look()
  }

  /** Another course lies on the desk; `inFront`: only because something has to. */
  opened(inFront: boolean) {
    this.shown = inFront
    this.back = !inFront
    this.beginning.forget()
  }

  open(path: string) {
    return this.#put(() => this.#rust.openCourse(path))
  }

  example(name: string) {
    return this.#put(() => this.#rust.openExample(name))
  }

  again(path: string, first: string) {
    return this.#put(() => this.#rust.courseAgain(path, first))
  }

  async forget(path: string) {
    this.#take(await this.#rust.forgetCourse(path))
  }

  #take(reply: Reply<YourCourses>) {
    this.trouble = reply.ok ? undefined : reply.trouble
    if (reply.ok) this.all = reply.value
  }

  /** One after another, so that the window and the desk stay free. */
  async #workOut(round: number) {
    for (const { path, trouble } of this.all?.recent ?? []) {
      if (trouble || !this.shown) continue
      const reply = await this.#rust.courseReadiness(path)
      if (round !== this.#round) return
      if (reply.ok) this.readiness = { ...this.readiness, [path]: reply.value }
      else this.unplanned = { ...this.unplanned, [path]: reply.trouble }
    }
  }
}

/** What was pressed is gone: the keyboard goes on at the head of the new place. */
async function toPlace() {
  await tick()
  globalThis.document?.getElementById('place')?.focus()
}
