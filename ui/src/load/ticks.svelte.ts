// What has been ticked off while loading: kept for each course that has a file, so that it is there when the
// program is started again.
import type * as Backend from '../backend'
import type { Trouble, WrittenHold, WrittenLoadLine, WrittenRun } from '../bindings'

type Rust = Pick<typeof Backend, 'ticks' | 'keepTicks'>

/** A line of the load list. With another count it is another line, and not ticked. */
export const lineOf = (run: WrittenRun, hold: WrittenHold, { item, count }: WrittenLoadLine) =>
  [run.number, hold.name, item, count].join('\n')

export class Ticks {
  /** Why they could not be kept. */
  trouble: Trouble | undefined = $state.raw()

  #ticked: readonly string[] = $state.raw([])
  #rust: Rust
  /** One after another, so that the newest are kept last. */
  #keeping: Promise<void> = Promise.resolve()

  constructor(rust: Rust) {
    this.#rust = rust
  }

  has = (line: string) => this.#ticked.includes(line)

  put(line: string, ticked: boolean) {
    const others = this.#ticked.filter((it) => it !== line)
    this.#ticked = ticked ? [...others, line] : others
    void this.#keep()
  }

  /** How many of a run are in. */
  of(run: WrittenRun): { ticked: number; all: number } {
    const lines = run.holds.flatMap((hold) => hold.lines.map((line) => lineOf(run, hold, line)))
    return { ticked: lines.filter(this.has).length, all: lines.length }
  }

  /** Another course is loaded anew. */
  forget() {
    this.#ticked = []
    this.trouble = undefined
  }

  /** What was ticked of the open course before. */
  async look() {
    const before = this.#ticked
    await this.#keeping
    const reply = await this.#rust.ticks()
    // What is ticked meanwhile is newer.
    if (reply.ok && this.#ticked === before) this.#ticked = reply.value
  }

  /** The course may have got a file, or another. */
  async saved() {
    if (this.#ticked.length !== 0) await this.#keep()
  }

  #keep(): Promise<void> {
    this.#keeping = this.#keeping.then(async () => {
      const reply = await this.#rust.keepTicks(this.#ticked)
      this.trouble = reply.ok ? undefined : reply.trouble
    })
    return this.#keeping
  }
}
