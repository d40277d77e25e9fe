// The lots of the store while they are typed over: each row keeps its place, what was refused keeps
// standing in it.
import type * as Backend from '../backend'
import type { Lot, LotTyped, Trouble } from '../bindings'
import type { OpenStore } from '../common/kit-store.svelte'
import { without } from '../common/record'
import { inOrder, rowsOf, typedOf, type Row } from './rows'

type Rust = Pick<typeof Backend, 'putLot' | 'removeLot'>

export class Lots {
  typed: Record<string, LotTyped> = $state.raw({})
  refused: Record<string, Trouble> = $state.raw({})

  #rust: Rust
  #store: OpenStore
  #rows: readonly Row[] = []
  #from: readonly Lot[] | undefined
  #ids = 0
  #line: Promise<void> = Promise.resolve()

  constructor(rust: Rust, store: OpenStore) {
    this.#rust = rust
    this.#store = store
  }

  /** The rows of the store as it was read last. */
  get rows(): readonly Row[] {
    const lots = this.#store.shown?.lots ?? []
    if (lots !== this.#from) {
      this.#rows = rowsOf(this.#rows, lots, () => `lot-${this.#ids++}`)
      this.#from = lots
    }
    return this.#rows
  }

  /** As the store has them, from the next look on: for a place that is opened anew. */
  inOrder() {
    this.#rows = inOrder(this.#rows, this.#from ?? [])
  }

  text(row: Row): LotTyped {
    return this.typed[row.id] ?? typedOf(row.lot)
  }

  type(row: Row, words: Partial<LotTyped>) {
    this.typed = { ...this.typed, [row.id]: { ...this.text(row), ...words } }
  }

  /** Puts a row into the store as it was typed. */
  put(row: Row): Promise<void> {
    return this.#inTurn(row.id, async (now) => {
      const lot = this.typed[now.id]
      if (!lot) return
      const refusal = await this.#store.change(() => this.#rust.putLot([now.lot.item, now.lot.owner], lot))
      this.#told(now, refusal)
      // What was typed meanwhile stays, until it is put as well.
      if (!refusal && this.typed[now.id] === lot) this.letGo(now)
    })
  }

  remove(row: Row): Promise<void> {
    return this.#inTurn(row.id, async (now) => {
      const refusal = await this.#store.change(() => this.#rust.removeLot(now.lot.item, now.lot.owner))
      this.#told(now, refusal)
      if (!refusal) this.letGo(now)
    })
  }

  add(lot: LotTyped): Promise<Trouble | undefined> {
    return this.#store.change(() => this.#rust.putLot(null, lot))
  }

  /** The row takes the store's own words again. */
  letGo(row: Row) {
    this.typed = without(this.typed, row.id)
    this.refused = without(this.refused, row.id)
  }

  #told(row: Row, refusal: Trouble | undefined) {
    this.refused = refusal ? { ...this.refused, [row.id]: refusal } : without(this.refused, row.id)
  }

  /** One after another, each with the row as it is by then. */
  #inTurn(id: string, turn: (now: Row) => Promise<void>): Promise<void> {
    this.#line = this.#line.then(async () => {
      const now = this.rows.find((row) => row.id === id)
      if (now) await turn(now)
    })
    return this.#line
  }
}
