// The open course. What is typed goes to Rust one question at a time, in order; the newest
// answer is shown, and what was refused keeps standing in its field.
import type { Reply } from '../backend'
import type { Trouble, View } from '../bindings'
import { withAdviceOf } from './advice'
import { isAmerican } from './field'
import { without } from './record'
import { Unsaid } from './unsaid'

/** `goesOn`: typed in the field of the edit before, which was not left meanwhile. */
type Edit = (key: string, text: string, goesOn: boolean) => Promise<Reply<View>>
type Rust = { edit: Edit; advise?: () => Promise<Reply<View>> }

/** What could be done otherwise is asked for when nothing has changed for so long. */
export const ADVICE_MS = 400

export class Course {
  view: View | undefined = $state.raw()
  /** What went wrong last, if it is about no field. */
  trouble: Trouble | undefined = $state.raw()
  /** What stands in fields and is not, or not in these words, in the file. */
  typed: Record<string, string> = $state.raw({})
  /** Why the file did not take it, by the key that was typed. */
  refused: Record<string, Trouble> = $state.raw({})
  busy = $state(false)
  /** The word for the units that quantities are shown in. */
  units = $derived(this.text('units'))
  /** Times are shown by the clock of twice twelve hours. */
  american = $derived(this.view !== undefined && isAmerican(this.view.values))

  #rust: Rust
  #changed: (same: boolean) => void
  /** What was typed while another question was on its way; the newest words of each field. */
  #waiting: Record<string, string> = {}
  /** The key that is on its way. */
  #asked: string | undefined
  #field: string | undefined
  /** The field of the last edit, while it goes on. */
  #goingOn: string | undefined
  /** Nobody is told that `1.` is no height while they are typing `1.2 m`. */
  #unsaid = new Unsaid((key, trouble) => (this.refused = { ...this.refused, [key]: trouble }))
  #advice: ReturnType<typeof setTimeout> | undefined
  #line: Promise<void> = Promise.resolve()

  /** `changed` hears of every other plan; and of what comes in on the `same` one, as advice does. */
  constructor(rust: Rust, changed: (same: boolean) => void = () => {}) {
    this.#rust = rust
    this.#changed = changed
  }

  /** What a field shows. */
  text(key: string): string {
    return this.typed[key] ?? this.view?.values[key] ?? ''
  }

  /** What is wrong at a field: with what was typed there, or with what clashes with it. */
  troubleAt(key: string): Trouble | undefined {
    const about = (it: Trouble) => it.key === key || it.key.startsWith(`${key}.`)
    return this.refused[key] ?? Object.values(this.refused).find(about)
  }

  enter(key: string) {
    this.#unsaid.now()
    this.#field = key
    this.#goingOn = undefined
  }

  /** The field is left: it takes the file's own words, unless they were refused. */
  leave(key: string) {
    if (this.#field === key) this.#field = undefined
    this.#unsaid.now()
    const underWay = key in this.#waiting || this.#asked === key
    if (!underWay && !this.refused[key]) this.typed = without(this.typed, key)
  }

  /** Sent at once, or with the newest of its field when the question before is answered. */
  type(key: string, text: string) {
    this.typed = { ...this.typed, [key]: text }
    this.#waiting[key] = text
    this.#unsaid.letGo()
    void this.send()
  }

  choose(key: string, text: string): Promise<void> {
    this.type(key, text)
    return this.#line
  }

  send(): Promise<void> {
    return this.#inTurn(async () => {})
  }

  /** Asks for another state of the course, after all that was typed before; or, of the `same`, for another drawing. */
  ask(question: () => Promise<Reply<View | null>>, same = false): Promise<void> {
    return this.#inTurn(async () => this.#take(await question(), same))
  }

  /** As `ask`, for another file or an earlier text: what stood in the fields goes. */
  replace(question: () => Promise<Reply<View | null>>): Promise<void> {
    return this.#inTurn(async () => {
      const reply = await question()
      if (reply.ok && reply.value) this.#letGo()
      this.#take(reply)
    })
  }

  /** As `ask`; a refusal goes to who asked, to be shown at its place. */
  async tell(question: () => Promise<Reply<View | null>>): Promise<Trouble | undefined> {
    let refusal: Trouble | undefined
    await this.#inTurn(async () => {
      const reply = await question()
      if (reply.ok) this.#take(reply)
      else refusal = reply.trouble
    })
    return refusal
  }

  /** Lets go of what was refused; if nothing was, takes the last change back. */
  undo(question: () => Promise<Reply<View>>): Promise<void> {
    return this.#inTurn(async () => {
      this.#unsaid.now()
      const held = Object.keys(this.refused).length !== 0
      this.#letGo()
      if (held) this.trouble = undefined
      else this.#take(await question())
    })
  }

  /** One question after another; first of all what is waiting. */
  #inTurn(turn: () => Promise<void>): Promise<void> {
    this.#line = this.#line.then(async () => {
      this.busy = true
      await this.#sendWaiting()
      await turn()
      this.busy = false
    })
    return this.#line
  }

  async #sendWaiting() {
    for (;;) {
      const [next] = Object.entries(this.#waiting)
      if (!next) return
      this.#waiting = without(this.#waiting, next[0])
      await this.#sendOne(...next)
    }
  }

  async #sendOne(key: string, text: string) {
    this.#asked = key
    const reply = await this.#rust.edit(key, text, this.#goingOn === key)
    this.#asked = undefined
    const newerWaits = key in this.#waiting
    if (!reply.ok) {
      if (!newerWaits) this.#refuse(key, reply.trouble)
      return
    }
    this.#take(reply)
    // What still waits was typed before the field was left.
    this.#goingOn = this.#field === key || newerWaits ? key : undefined
    this.refused = without(this.refused, key)
    if (!newerWaits && this.#field !== key) this.typed = without(this.typed, key)
    this.#tryAgain()
  }

  #refuse(key: string, trouble: Trouble) {
    if (this.#field === key && !this.refused[key]) this.#unsaid.later(key, trouble)
    else this.refused = { ...this.refused, [key]: trouble }
  }

  /** What was refused may fit, now that something else has changed. */
  #tryAgain() {
    for (const key of Object.keys(this.refused)) {
      const text = this.typed[key]
      if (text !== undefined && !(key in this.#waiting)) this.#waiting[key] = text
    }
  }

  /** Through what is of the `same` text, as advice or a drawing, an edit that goes on goes on. */
  #take(reply: Reply<View | null>, same = false) {
    this.trouble = reply.ok ? undefined : reply.trouble
    if (!reply.ok || !reply.value) return
    if (!same) this.#goingOn = undefined
    this.view = withAdviceOf(reply.value, this.view)
    this.#changed(same)
    clearTimeout(this.#advice)
    const { advise } = this.#rust
    if (!reply.value.advised && advise) this.#advice = setTimeout(() => void this.ask(advise, true), ADVICE_MS)
  }

  #letGo() {
    this.#unsaid.letGo()
    this.#waiting = {}
    this.typed = {}
    this.refused = {}
  }
}
