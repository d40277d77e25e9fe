// Printing: which pages are wanted, in what size and for whom, where they go, what was printed last.
import type * as Backend from '../backend'
import type { Reply } from '../backend'
import type { DocumentName, PagesAsked, Printed, Printing as Progress, Trouble } from '../bindings'
import { Paper } from './paper.svelte'

type Rust = Pick<
  typeof Backend,
  'documents' | 'printFolder' | 'choosePrintFolder' | 'print' | 'stopPrint' | 'showPrinted' | 'paperSheets' | 'printSheets'
>

export class Printing {
  documents: DocumentName[] = $state.raw([])
  /** Those whose tick is not as it began. */
  turned: readonly string[] = $state.raw([])
  /** In the large edition. */
  large = $state(false)
  /** Whose own pages, as places in the group; everybody's where nothing is said. */
  students: readonly number[] | null = $state.raw(null)
  folder: string | null = $state(null)
  /** How far the print has come that runs. */
  progress: Progress | undefined = $state.raw()
  stopping = $state(false)
  printed: Printed | undefined = $state.raw()
  trouble: Trouble | undefined = $state.raw()
  busy = $state(false)
  /** The same pages, printed on paper. */
  readonly paper: Paper

  #rust: Rust
  #settle: () => Promise<void>

  /** `settle` waits until all that was typed is in the plan. */
  constructor(rust: Rust, settle: () => Promise<void>) {
    this.#rust = rust
    this.#settle = settle
    this.paper = new Paper(rust, settle)
  }

  get wanted(): string[] {
    return this.documents.filter((it) => it.wanted !== this.turned.includes(it.name)).map((it) => it.name)
  }

  get asked(): PagesAsked {
    return { large_print: this.large, students: this.students && [...this.students] }
  }

  /** Which documents there are, and where they would go. */
  async look() {
    const documents = await this.#rust.documents()
    const folder = await this.#rust.printFolder()
    if (documents.ok) this.documents = documents.value
    if (folder.ok) this.folder = folder.value
    this.trouble = documents.ok ? (folder.ok ? undefined : folder.trouble) : documents.trouble
  }

  want(name: string, wanted: boolean) {
    const begins = this.documents.find((it) => it.name === name)?.wanted ?? true
    const others = this.turned.filter((it) => it !== name)
    this.turned = wanted === begins ? others : [...others, name]
  }

  /** As they began: all that this course has something to say in, and nothing private. */
  wantUsual() {
    this.turned = []
  }

  wantNone() {
    this.turned = this.documents.filter((it) => it.wanted).map((it) => it.name)
  }

  /** One student's pages wanted or not; with everybody's wanted it is the same as saying nothing. */
  wantStudent(place: number, wanted: boolean, of: number) {
    const all = Array.from({ length: of }, (_, at) => at)
    const before = this.students ?? all
    const now = all.filter((at) => (at === place ? wanted : before.includes(at)))
    this.students = now.length === of ? null : now
  }

  async choose() {
    const folder = this.#value(await this.#rust.choosePrintFolder())
    if (folder) this.folder = folder
  }

  /** Prints what is wanted, after asking for a folder if there is none. */
  async print() {
    if (this.busy || this.paper.busy || this.wanted.length === 0) return
    if (this.folder === null) await this.choose()
    if (this.folder === null) return
    this.busy = true
    this.stopping = false
    this.printed = undefined
    this.paper.forget()
    await this.#settle()
    const tell = (progress: Progress) => (this.progress = progress)
    this.printed = this.#value(await this.#rust.print(this.wanted, this.asked, tell))
    this.progress = undefined
    this.busy = false
  }

  /** The same pages, by the system's own print dialogue. */
  async printOnPaper() {
    if (this.busy) return
    this.printed = undefined
    this.trouble = undefined
    await this.paper.print(this)
  }

  /** The document that is being set is still finished. */
  async stop() {
    this.stopping = true
    this.#value(await this.#rust.stopPrint())
  }

  async show() {
    this.#value(await this.#rust.showPrinted())
  }

  /** Another course: nothing of it has been printed, and its pages are wanted as at first. */
  forget() {
    this.paper.forget()
    this.printed = undefined
    this.trouble = undefined
    this.turned = []
    this.students = null
    this.folder = null
  }

  #value<T>(reply: Reply<T>): T | undefined {
    this.trouble = reply.ok ? undefined : reply.trouble
    return reply.ok ? reply.value : undefined
  }
}
