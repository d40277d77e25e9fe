// The words of the trade, and the one whose meaning is shown.
import { tick } from 'svelte'
import type { Reply } from '../backend'
import type { Sketch, Term } from '../bindings'
import { known } from './terms'

type Rust = { words: () => Promise<Reply<Term[]>>; sketch: (name: string) => Promise<Reply<Sketch>> }
/** The edges of what was pressed. */
export type Edges = Pick<DOMRect, 'left' | 'top' | 'bottom'>
type Pressed = { getBoundingClientRect: () => Edges; focus: () => void }

export class Glossary {
  terms: Term[] = $state.raw([])
  open: Term | undefined = $state.raw()
  /** Where the word stands whose meaning is shown. */
  edges: Edges = $state.raw({ left: 0, top: 0, bottom: 0 })
  sketch: Sketch | undefined = $state.raw()
  readonly known = $derived(known(this.terms))
  readonly said = $derived(this.open ? `${this.open.word}: ${this.open.meaning}` : '')

  #rust: Rust
  #sketches: Record<string, Sketch> = {}
  #pressed: Pressed | undefined

  constructor(rust: Rust) {
    this.#rust = rust
  }

  /** The words, asked for once. */
  async look() {
    if (this.terms.length !== 0) return
    const reply = await this.#rust.words()
    if (reply.ok) this.terms = reply.value
  }

  /** The meaning of a word beside the place where it was pressed; the same word once more puts it away. */
  async press(term: Term, pressed: Pressed) {
    if (this.open === term && this.#pressed === pressed) return this.close()
    this.open = term
    this.#pressed = pressed
    this.edges = pressed.getBoundingClientRect()
    this.sketch = undefined
    if (term.drawing) await this.#draw(term, term.drawing)
  }

  async #draw(term: Term, name: string) {
    const there = this.#sketches[name] ?? (await this.#asked(name))
    // Another word may have been pressed meanwhile.
    if (this.open === term) this.sketch = there
  }

  async #asked(name: string): Promise<Sketch | undefined> {
    const reply = await this.#rust.sketch(name)
    if (!reply.ok) return undefined
    if (reply.value.of_the_course) return reply.value
    // The window allows no style inside a drawing.
    const sketch = { ...reply.value, svg: reply.value.svg.replace(/\sstyle="[^"]*"/g, '') }
    this.#sketches[name] = sketch
    return sketch
  }

  /** The page has moved below it. */
  follow() {
    if (this.#pressed) this.edges = this.#pressed.getBoundingClientRect()
  }

  isOpen = (term: Term, pressed: Pressed | undefined) => this.open === term && this.#pressed === pressed

  /** Puts the meaning away; whoever reads by keys is back at the word. */
  async close(back = true) {
    const pressed = this.#pressed
    this.open = undefined
    this.#pressed = undefined
    if (!back) return
    await tick()
    pressed?.focus()
  }
}
