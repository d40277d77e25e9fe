// Counting the kit home: what was typed of each item, and what it came to.
import type * as Backend from '../backend'
import type { BookedItem, CountedHome, ReturnTyped, Trouble } from '../bindings'
import type { OpenStore } from '../common/kit-store.svelte'
import { allBack, stillBack, told, type Fate, type Fates } from './fates'

type Rust = Pick<typeof Backend, 'kitHome' | 'kitNotHome'>

export class Home {
  typed: Record<string, Fates> = $state.raw({})
  /** What was refused; its key ends with the item, if it is about one. */
  trouble: Trouble | undefined = $state.raw()
  told: readonly string[] = $state.raw([])

  #rust: Rust
  #store: OpenStore
  /** Items whose count of what came back a person has typed: it stays. */
  #own: readonly string[] = []

  constructor(rust: Rust, store: OpenStore) {
    this.#rust = rust
    this.#store = store
  }

  text = ({ item, count }: BookedItem): Fates => this.typed[item] ?? allBack(count)

  type(booked: BookedItem, fate: Fate, words: string) {
    const now = { ...this.text(booked), [fate]: words }
    if (fate === 'back') this.#own = [...this.#own, booked.item]
    const back = this.#own.includes(booked.item) ? undefined : stillBack(booked.count, now)
    this.typed = { ...this.typed, [booked.item]: { ...now, back: back ?? now.back } }
  }

  /** What is wrong at a field, or with an item as a whole. */
  troubleAt(fate: Fate, { item }: BookedItem): Trouble | undefined {
    return this.trouble?.key === `${fate}.${item}` ? this.trouble : undefined
  }

  async count(booked: readonly BookedItem[]) {
    const returns: ReturnTyped[] = booked.map((it) => ({ item: it.item, ...this.text(it) }))
    let done: CountedHome | undefined
    this.trouble = await this.#store.change(async () => {
      const reply = await this.#rust.kitHome(returns)
      if (!reply.ok) return reply
      done = reply.value
      return { ok: true, value: reply.value.view }
    })
    this.told = done ? told(done) : []
  }

  /** The store as it was before the kit came home; what was typed is there still. */
  async takeBack() {
    this.trouble = await this.#store.change(this.#rust.kitNotHome)
    this.told = this.trouble ? [] : ['Taken back: the store is as it was before, and the course holds its kit again.']
  }

  /** Another course brings other things home. */
  forget() {
    this.typed = {}
    this.trouble = undefined
    this.told = []
    this.#own = []
  }
}
