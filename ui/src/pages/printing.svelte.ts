// Printing: which pages are wanted, where they go, what was printed last.
import type * as Backend from '../backend'
import type { Reply } from '../backend'
import type { DocumentName, Printed, Trouble } from '../bindings'

type Rust = Pick<typeof Backend, 'documents' | 'printFolder' | 'choosePrintFolder' | 'print' | 'showPrinted'>

export class Printing {
  documents: DocumentName[] = $state.raw([])
  unwanted: readonly string[] = $state.raw([])
  folder: string | null = $state(null)
  printed: Printed | undefined = $state.raw()
  trouble: Trouble | undefined = $state.raw()
  busy = $state(false)

  #rust: Rust
  #settle: () => Promise<void>

  /** `settle` waits until all that was typed is in the plan. */
  constructor(rust: Rust, settle: () => Promise<void>) {
    this.#rust = rust
    this.#settle = settle
  }

  get wanted(): string[] {
    return this.documents.map((it) => it.name).filter((name) => !this.unwanted.includes(name))
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
    const others = this.unwanted.filter((it) => it !== name)
    this.unwanted = wanted ? others : [...others, name]
  }

  async choose() {
    const folder = this.#value(await this.#rust.choosePrintFolder())
    if (folder) this.folder = folder
  }

  /** Prints what is wanted, after asking for a folder if there is none. */
  async print() {
    if (this.busy || this.wanted.length === 0) return
    if (this.folder === null) await this.choose()
    if (this.folder === null) return
    this.busy = true
    this.printed = undefined
    await this.#settle()
    this.printed = this.#value(await this.#rust.print(this.wanted))
    this.busy = false
  }

  async show() {
    this.#value(await this.#rust.showPrinted())
  }

  /** Another course: nothing of it has been printed, all its pages are wanted. */
  forget() {
    this.printed = undefined
    this.trouble = undefined
    this.unwanted = []
    this.folder = null
  }

  #value<T>(reply: Reply<T>): T | undefined {
    this.trouble = reply.ok ? undefined : reply.trouble
    return reply.ok ? reply.value : undefined
  }
}
