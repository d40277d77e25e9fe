// The page that is looked at: which document, which page of it, and what Rust made of it last.
import type * as Backend from '../backend'
import type { DocumentName, PagePreview, PagesAsked, Trouble } from '../bindings'
import { without } from '../common/record'

type Rust = Pick<typeof Backend, 'previewPage' | 'leavePages'>
type Asked = { readonly documents: readonly DocumentName[]; readonly asked: PagesAsked }

/** Out of sight for so long, pages are not expected back: what is kept to set them quickly goes. */
export const AWAY_MS = 10_000

export class Sheet {
  /** The document that was picked. */
  picked: string | undefined = $state()
  /** What stands on the screen; of the document before until the new one is there. */
  shown: PagePreview | undefined = $state.raw()
  /** The name of the document it is a page of. */
  shownOf: string | undefined = $state()
  trouble: Trouble | undefined = $state.raw()
  busy = $state(false)

  #rust: Rust
  #printing: Asked
  /** The page that was asked for. */
  #page = 1
  /** Counts the questions: only the newest one's answer is shown. */
  #newest = 0
  /** The question about each document that is not answered yet. */
  #open: Record<string, Promise<unknown>> = {}
  #watched = false
  #away: ReturnType<typeof setTimeout> | undefined

  /** In the size and for the students that `printing` is asked for. */
  constructor(rust: Rust, printing: Asked) {
    this.#rust = rust
    this.#printing = printing
  }

  /** The document looked at; the first until one is picked. */
  get document(): DocumentName | undefined {
    const { documents } = this.#printing
    return documents.find((it) => it.name === this.picked) ?? documents[0]
  }

  /** It is in sight from now on, and drawn anew whenever the course changes. */
  open() {
    clearTimeout(this.#away)
    this.#watched = true
    return this.redraw()
  }

  /** It is out of sight; what still comes in is too late. */
  close() {
    if (!this.#watched) return
    this.#watched = false
    this.#away = setTimeout(() => void this.#rust.leavePages(), AWAY_MS)
  }

  /** The course is another one; or the `same`, and what could be done otherwise is known. Pages tell of none
      that they have not asked for themselves, but of a piece set alone the rest of its document is still to come. */
  courseChanged(same = false) {
    if (this.#watched && (!same || this.shown?.alone)) void this.redraw()
  }

  pick(name: string) {
    this.picked = name
    return this.#ask(1)
  }

  /** So many documents further down the list; none beyond its ends. Answers which it is. */
  step(by: 1 | -1): string | undefined {
    const { documents } = this.#printing
    const at = documents.findIndex((it) => it.name === this.document?.name)
    const next = documents[at + by]
    if (next) void this.pick(next.name)
    return next?.name
  }

  /** What stands on the screen is of the document before. */
  get late() {
    return this.shownOf !== this.document?.name
  }

  get first() {
    return !this.shown || this.shown.page <= 1
  }

  get last() {
    return !this.shown || this.shown.pages <= this.shown.page
  }

  /** A page on or back. Pages turned faster than they come are counted from the one asked for. */
  turn(by: 1 | -1) {
    const to = this.#page + by
    if (to < 1 || (this.shown && this.shown.pages < to)) return
    return this.#ask(to)
  }

  redraw() {
    return this.#ask(this.#page)
  }

  /** Another course begins at its first page. */
  forget() {
    this.picked = undefined
    this.shown = undefined
    this.#page = 1
    this.#newest += 1
  }

  async #ask(page: number) {
    const { document } = this
    // Pages for nobody are blank: what was there stays until somebody is chosen.
    if (!document || this.#printing.asked.students?.length === 0) return
    this.#page = page
    const question = ++this.#newest
    this.busy = true
    // One question about a document at a time: a template that takes long is not asked again for every letter typed.
    // Where there is none it is asked at once, before the window is busy with showing what has changed.
    const { name } = document
    if (this.#open[name]) {
      await this.#open[name]
      if (question !== this.#newest) return
    }
    const asking = this.#rust.previewPage(name, page, this.#printing.asked)
    this.#open[name] = asking
    const reply = await asking
    this.#open = without(this.#open, name)
    if (question !== this.#newest) return
    this.busy = false
    this.trouble = reply.ok ? undefined : reply.trouble
    if (!reply.ok) return
    this.shown = reply.value
    this.shownOf = name
    this.#page = reply.value.page
  }
}
