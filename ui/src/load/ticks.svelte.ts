// What has been ticked off while loading: for the open course, as long as the window is.
import type { WrittenHold, WrittenLoadLine, WrittenRun } from '../bindings'

/** A line of the load list. With another count it is another line, and not ticked. */
export const lineOf = (run: WrittenRun, hold: WrittenHold, { item, count }: WrittenLoadLine) =>
  [run.number, hold.name, item, count].join('\n')

export class Ticks {
  #ticked: readonly string[] = $state.raw([])

  has = (line: string) => this.#ticked.includes(line)

  put(line: string, ticked: boolean) {
    const others = this.#ticked.filter((it) => it !== line)
    this.#ticked = ticked ? [...others, line] : others
  }

  /** How many of a run are in. */
  of(run: WrittenRun): { ticked: number; all: number } {
    const lines = run.holds.flatMap((hold) => hold.lines.map((line) => lineOf(run, hold, line)))
    return { ticked: lines.filter(this.has).length, all: lines.length }
  }

  /** Another course is loaded anew. */
  forget() {
    this.#ticked = []
  }
}
