// What a change has moved, in a sentence for those who hear the window: once, after a pause, and
// not with each letter that is typed.
import type { Moved, View } from '../bindings'

/** Nothing is said while changes come quicker than this. */
export const PAUSE_MS = 1000

type Heard = Pick<View, 'moved' | 'undo' | 'unsaved' | 'file'>

/** As `Length from 9.0 m to 8.5 m.`, one sentence for each figure. */
export function inWords(moved: readonly Moved[]): string {
  const one = ({ what, before, after }: Moved) => {
    const name = what.charAt(0).toUpperCase() + what.slice(1)
    return `${name} from ${before || 'none'} to ${after || 'none'}.`
  }
  return moved.map(one).join(' ')
}

/** What was changed and what that moved, as one text: the fields of what Rust tells come in any order. */
const told = ({ moved, undo }: Heard) =>
  JSON.stringify([inWords(moved), undo?.map(({ key, from, to }) => [key, from, to])])

export class Saying {
  words = $state('')
  #last: Heard | undefined
  #timer: ReturnType<typeof setTimeout> | undefined

  /** The plan as it is now. What was there when the course was opened is no change. */
  hear(view: Heard) {
    const before = this.#last
    this.#last = view
    if (!before || before.file !== view.file) return this.#later('')
    if (told(before) !== told(view)) this.#later(inWords(view.moved))
    else if (before.unsaved && !view.unsaved) this.#later('Saved.')
  }

  /** Emptied meanwhile: the same words in the same place would not be said again. */
  #later(words: string) {
    clearTimeout(this.#timer)
    this.words = ''
    if (words) this.#timer = setTimeout(() => (this.words = words), PAUSE_MS)
  }
}
