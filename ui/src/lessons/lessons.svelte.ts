// The shelf of lessons and the one that is being written. What is typed goes to Rust one part at a
// time; the page follows when nothing has been typed for a moment.
import type * as Backend from '../backend'
import type { Reply } from '../backend'
import type { LessonChange, LessonDraft, LessonKept, LessonShelf, PagePreview, Trouble, View } from '../bindings'
import { without } from '../common/record'

type Rust = Pick<
  typeof Backend,
  'lessonShelf' | 'lesson' | 'newLesson' | 'changeLesson' | 'previewLesson' | 'saveLesson' | 'takeLessonAway'
>
type Course = { tell: (question: () => Promise<Reply<View | null>>) => Promise<Trouble | undefined> }
export type Page = 'lesson-handouts' | 'lesson-cards'

/** The page is set anew when nothing has been typed for so long. */
export const PAGE_MS = 350

export class Lessons {
  shelf: LessonShelf | undefined = $state.raw()
  /** The lesson that is being written. */
  draft: LessonDraft | undefined = $state.raw()
  /** Lessons that were left with words not saved. */
  left: Record<string, LessonDraft> = $state.raw({})
  /** What stands in fields, by part, while they are typed in. */
  typed: Record<string, string> = $state.raw({})
  trouble: Trouble | undefined = $state.raw()
  /** What was done last, as a sentence. */
  said = $state('')
  /** Whether to take the lesson away has been asked and not yet answered. */
  asking = $state(false)
  page: Page = $state('lesson-handouts')
  shown: PagePreview | undefined = $state.raw()
  /** What stands on the screen is older than what is written. */
  late = $state(false)

  #rust: Rust
  #course: Course
  #waiting: Record<string, LessonChange> = {}
  #line: Promise<void> = Promise.resolve()
  #timer: ReturnType<typeof setTimeout> | undefined
  #newest = 0
  #at = 1

  constructor(rust: Rust, course: Course) {
    this.#rust = rust
    this.#course = course
  }

  /** The place is visited: the shelf as it is now. */
  async look() {
    this.said = ''
    const reply = await this.#rust.lessonShelf()
    this.trouble = reply.ok ? undefined : reply.trouble
    if (reply.ok) this.shelf = reply.value
  }

  async open(id: string) {
    const reply = id in this.left ? { ok: true as const, value: this.left[id]! } : await this.#rust.lesson(id)
    this.#begin(reply)
  }

  async write(title: string) {
    this.#begin(await this.#rust.newLesson(title))
  }

  /** Back to the shelf; what is not saved stays at hand. */
  async leave() {
    await this.#line
    const { draft } = this
    if (!draft) return
    this.left = draft.saved ? without(this.left, draft.id) : { ...this.left, [draft.id]: draft }
    this.draft = undefined
    this.#letGo()
  }

  /** One part as it was typed; `words` is what its field holds meanwhile. */
  type(part: string, change: LessonChange, words?: string) {
    if (words !== undefined) this.typed = { ...this.typed, [part]: words }
    this.said = ''
    this.asking = false
    this.#waiting = { ...this.#waiting, [part]: change }
    void this.#send()
  }

  /** The field is left and takes the lesson's own words again. */
  async settle(part: string) {
    await this.#line
    if (!(part in this.#waiting)) this.typed = without(this.typed, part)
  }

  save() {
    return this.#keep(this.#rust.saveLesson, ({ draft }) =>
      draft.fault ? 'Saved. It does not count until it is mended.' : 'Saved. It counts from now on.')
  }

  /** Asks first; the second time it is done. */
  async takeAway() {
    this.asking = !this.asking
    if (this.asking) return
    await this.#keep(this.#rust.takeLessonAway, ({ draft }) => {
      const now = draft.whose === 'new' ? 'It is off the shelf.' : 'The built-in lesson counts again.'
      return `${now} Your words still stand here: save them, and they are back.`
    })
  }

  /** The words that are being written make way for those of the shelf. */
  async asOnShelf() {
    const id = this.draft?.id ?? ''
    this.left = without(this.left, id)
    this.#begin(await this.#rust.lesson(id))
  }

  lookAt(page: Page) {
    this.page = page
    this.#at = 1
    return this.redraw()
  }

  async turn(by: 1 | -1) {
    const to = this.#at + by
    if (to < 1 || (this.shown && this.shown.pages < to)) return
    this.#at = to
    await this.redraw()
  }

  async redraw() {
    const { draft } = this
    if (!draft || draft.fault) return
    const question = ++this.#newest
    const page = draft.handout ? this.page : 'lesson-cards'
    const reply = await this.#rust.previewLesson(draft.id, draft.text, page, this.#at)
    if (question !== this.#newest) return
    this.trouble = reply.ok ? undefined : reply.trouble
    if (!reply.ok || !reply.value) return
    this.shown = reply.value
    this.#at = reply.value.page
    this.late = false
  }

  #begin(reply: Reply<LessonDraft>) {
    this.#letGo()
    this.trouble = reply.ok ? undefined : reply.trouble
    if (!reply.ok) return
    this.draft = reply.value
    void this.redraw()
  }

  #letGo() {
    clearTimeout(this.#timer)
    this.#newest += 1
    this.#waiting = {}
    this.typed = {}
    this.said = ''
    this.asking = false
    this.shown = undefined
    this.late = false
    this.#at = 1
  }

  /** One question after another, each about the text that the one before left. */
  #send(): Promise<void> {
    this.#line = this.#line.then(async () => {
      for (;;) {
        const [next] = Object.entries(this.#waiting)
        const { draft } = this
        if (!next || !draft) return
        this.#waiting = without(this.#waiting, next[0])
        const reply = await this.#rust.changeLesson(draft.id, draft.text, next[1])
        this.trouble = reply.ok ? undefined : reply.trouble
        // The lesson may have been left meanwhile.
        if (reply.ok && this.draft?.id === draft.id) this.draft = reply.value
        this.late = true
        clearTimeout(this.#timer)
        this.#timer = setTimeout(() => void this.redraw(), PAGE_MS)
      }
    })
    return this.#line
  }

  async #keep(question: (id: string, text: string) => Promise<Reply<LessonKept>>, words: (kept: LessonKept) => string) {
    await this.#send()
    const { draft } = this
    if (!draft) return
    let kept: LessonKept | undefined
    this.trouble = await this.#course.tell(async () => {
      const reply = await question(draft.id, draft.text)
      if (!reply.ok) return reply
      kept = reply.value
      return { ok: true, value: reply.value.view }
    })
    if (!kept) return
    this.draft = kept.draft
    this.shelf = kept.shelf
    this.left = without(this.left, draft.id)
    this.said = words(kept)
    void this.redraw()
  }
}
