// What keeps the course from being lost: Rust tells how things stand, a person answers here.
import type * as Backend from '../backend'
import type { Reply } from '../backend'
import type { Keeping, Trouble, View } from '../bindings'
import type { Course } from '../common/course.svelte'
import { notes, type Answer, type Asks, type Note } from './notes'

type Rust = Pick<
  typeof Backend,
  'keeping' | 'takeKept' | 'leaveKept' | 'readAnew' | 'keepMine' | 'saveOver' | 'save' | 'saveAs'
>
type Asked = () => Promise<Reply<View | null>>

/** What the window does itself, because more than the course follows from it. */
export type Doing = {
  /** Another course comes to lie on the desk. */
  open: (question: Asked) => Promise<void>
  save: (question: Asked) => Promise<void>
}

const WAITS: Record<string, Asks> = { 'changed-outside': 'overwrite', 'open-elsewhere': 'elsewhere' }
const CALM: Keeping = { kept: [], outside: 'same', elsewhere: false, broken: [] }

export class OpenKeeping {
  #now: Keeping = $state.raw(CALM)
  #asks: Asks = $state()
  #leaving: string | undefined = $state()
  #away: readonly Trouble[] = $state.raw([])

  #rust: Rust
  #course: Course
  #doing: Doing

  constructor(rust: Rust, course: Course, doing: Doing) {
    this.#rust = rust
    this.#course = course
    this.#doing = doing
  }

  /** What is to be told now. */
  get notes(): Note[] {
    const view = this.#course.view
    return notes({
      now: this.#now,
      file: view?.file ?? '',
      unsaved: view?.unsaved ?? false,
      asks: this.#asks,
      leaving: this.#leaving,
      away: this.#away,
    })
  }

  listen() {
    return this.#rust.keeping((now) => {
      this.#now = now
      // Nothing is left to ask where the file is as it was, or not there at all.
      const calm = now.outside === 'same' || now.outside === 'gone'
      if (this.#asks === 'overwrite' ? calm : !now.elsewhere) this.#asks = undefined
    })
  }

  /** After a save: one that somebody else stands in the way of becomes a question. */
  saved() {
    this.#asks = WAITS[this.#course.trouble?.code ?? '']
    if (this.#asks) this.#course.trouble = undefined
  }

  async answer(note: Note, answer: Answer) {
    const { kept } = note
    if (answer === 'take' && kept) await this.#take(kept)
    else if (answer === 'leave') this.#leaving = kept?.id
    else if (answer === 'stay') this.#leaving = undefined
    else if (answer === 'leaveForGood' && kept) await this.#rust.leaveKept(kept.id)
    else if (answer === 'readAnew') await this.#course.replace(this.#rust.readAnew)
    else if (answer === 'keepMine') await this.#course.ask(this.#rust.keepMine)
    else if (answer === 'overwrite') await this.#doing.save(this.#rust.saveOver)
    else if (answer === 'dontSave') this.#asks = undefined
    else if (answer === 'save') await this.#doing.save(this.#rust.save)
    else if (answer === 'saveAs') await this.#doing.save(this.#rust.saveAs)
    else if (answer === 'putAway') this.#putAway(note)
  }

  #take({ id, here }: { id: string; here: boolean }) {
    const question = () => this.#rust.takeKept(id)
    return here ? this.#course.replace(question) : this.#doing.open(question)
  }

  #putAway({ what, about }: Note) {
    this.#away = [...this.#away, ...this.#now.broken.filter((it) => it.what === what && it.cure === about)]
  }
}
