// Printing on paper: the pages are set, held by the window while the system asks for a printer, and let go of.
import type * as Backend from '../backend'
import type { Reply } from '../backend'
import type { PagesAsked, PaperEnd, PaperSheets, Printing as Progress, Trouble } from '../bindings'
import { sheetsHeld } from './sheets'

type Rust = Pick<typeof Backend, 'paperSheets' | 'printSheets' | 'stopPrint'>
type Asked = { readonly wanted: readonly string[]; readonly asked: PagesAsked }
/** What came of the last print. */
type Outcome = { end: PaperEnd | 'stopped'; pages: number } & Pick<PaperSheets, 'unprintable' | 'own'>

const UNREADABLE: Trouble = {
  code: 'sheet', key: '', what: 'A page could not be made ready for the printer.',
  cure: 'Print into a folder, and print the files from there.',
}

export class Paper {
  /** The pages are being set, or the system asks for a printer. */
  doing: 'setting' | 'asking' | undefined = $state()
  /** How far the setting has come. */
  progress: Progress | undefined = $state.raw()
  stopping = $state(false)
  /** What a printer would get now. */
  held: PaperSheets | undefined = $state.raw()
  outcome: Outcome | undefined = $state.raw()
  trouble: Trouble | undefined = $state.raw()

  #rust: Rust
  #settle: () => Promise<void>
  #ready: () => Promise<void>
  #printed: (() => void) | undefined

  /** `settle` waits until all that was typed is in the plan, `ready` until the window holds the sheets. */
  constructor(rust: Rust, settle: () => Promise<void>, ready = sheetsHeld) {
    this.#rust = rust
    this.#settle = settle
    this.#ready = ready
  }

  get busy() {
    return this.doing !== undefined
  }

  async print({ wanted, asked }: Asked) {
    if (this.busy || wanted.length === 0) return
    this.forget()
    this.stopping = false
    this.doing = 'setting'
    await this.#settle()
    const sheets = this.#value(
      await this.#rust.paperSheets([...wanted], asked, (progress) => (this.progress = progress)),
    )
    this.progress = undefined
    // Stopped in the last document, all pages are there: they are not wanted any more.
    if (this.stopping || sheets === null) this.outcome = { end: 'stopped', pages: 0, unprintable: '', own: [] }
    else if (sheets) await this.#hand(sheets)
    this.held = undefined
    this.doing = undefined
  }

  /** The document that is being set is still finished. */
  async stop() {
    this.stopping = true
    this.#value(await this.#rust.stopPrint())
  }

  /** The system has done with the pages. */
  afterPrint() {
    this.#printed?.()
  }

  /** Another course, or another print: of this one there is nothing more to say. */
  forget() {
    this.outcome = undefined
    this.trouble = undefined
  }

  async #hand(sheets: PaperSheets) {
    this.held = sheets
    try {
      await this.#ready()
    } catch {
      this.trouble = UNREADABLE
      return
    }
    this.doing = 'asking'
    const printed = new Promise<void>((done) => (this.#printed = done))
    const end = this.#value(await this.#rust.printSheets(sheets.letter))
    if (end === 'asking') await printed
    this.#printed = undefined
    const { unprintable, own } = sheets
    if (end) this.outcome = { end, pages: sheets.sheets.length, unprintable, own }
  }

  #value<T>(reply: Reply<T>): T | undefined {
    this.trouble = reply.ok ? undefined : reply.trouble
    return reply.ok ? reply.value : undefined
  }
}
