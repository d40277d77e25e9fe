// What is typed into a row reaches the store once, is not lost to an answer, and is told where it is refused.
import { beforeEach, expect, it } from 'vitest'
import type { Reply } from '../backend'
import type { KitStore, Lot, LotTyped, View } from '../bindings'
import { Course } from '../common/course.svelte'
import { OpenStore } from '../common/kit-store.svelte'
import { Lots } from './lots.svelte'
import { NONE } from './rows'

/** A store of Rust as far as lots go: it refuses letters for a count, and a second lot of one name. */
class Rust {
  lots: Lot[] = []
  asked: ([string, string] | null)[] = []

  kitStore = async (): Promise<Reply<KitStore>> => ({ ok: true, value: { lots: [...this.lots] } as KitStore })
  putLot = async (was: [string, string] | null, typed: LotTyped): Promise<Reply<View>> => {
    this.asked.push(was)
    const no = (key: string): Reply<View> => ({ ok: false, trouble: { code: 'no', key, what: '', cure: '' } })
    if (/\D/.test(typed.good)) return no('good')
    if (was === null && this.lots.some((it) => it.item === typed.item)) return no('')
    if (was !== null && !this.lots.some((it) => it.item === was[0])) return no('gone')
    const lot = { ...typed, good: Number(typed.good), care: Number(typed.care), broken: Number(typed.broken) }
    this.lots = [...this.lots.filter((it) => it.item !== was?.[0]), lot]
    return { ok: true, value: { advised: true } as View }
  }
  removeLot = async (item: string): Promise<Reply<View>> => {
    this.lots = this.lots.filter((it) => it.item !== item)
    return { ok: true, value: { advised: true } as View }
  }
}

let rust: Rust
let lots: Lots
const row = (at = 0) => lots.rows[at]!

beforeEach(async () => {
  rust = new Rust()
  const store = new OpenStore(rust, new Course({ edit: async () => ({ ok: true, value: { advised: true } as View }) }))
  lots = new Lots(rust, store)
  await lots.add({ ...NONE, item: 'Spade', good: '4' })
})

it('is put as a whole, and shows the store again', async () => {
  lots.type(row(), { care: '1' })
  expect(lots.text(row()).care).toBe('1')
  await lots.put(row())
  expect(rust.lots[0]).toMatchObject({ item: 'Spade', good: 4, care: 1 })
  expect(lots.typed).toEqual({})
})

it('asks for nothing where nothing was typed', async () => {
  await lots.put(row())
  expect(rust.asked).toEqual([null])
})

it('keeps what was refused, says where, and lets go of it when asked', async () => {
  lots.type(row(), { good: 'few' })
  await lots.put(row())
  expect(lots.refused[row().id]?.key).toBe('good')
  expect(lots.text(row()).good).toBe('few')
  expect(rust.lots[0]?.good).toBe(4)
  lots.letGo(row())
  expect(lots.text(row()).good).toBe('4')
})

it('keeps what is typed while the store answers', async () => {
  lots.type(row(), { good: '5' })
  const answer = lots.put(row())
  lots.type(row(), { broken: '2' })
  await answer
  expect(lots.text(row()).broken).toBe('2')
  await lots.put(row())
  expect(rust.lots[0]).toMatchObject({ good: 5, broken: 2 })
})

it('finds its lot under its newest name, however quick the typing', async () => {
  const before = row()
  lots.type(before, { item: 'Border spade' })
  const first = lots.put(before)
  lots.type(before, { note: 'new handle' })
  await Promise.all([first, lots.put(before)])
  expect(rust.lots).toMatchObject([{ item: 'Border spade', note: 'new handle' }])
  expect(lots.refused).toEqual({})
})

it('tells who adds it what was refused, and goes when it is removed', async () => {
  expect(await lots.add({ ...NONE, item: 'Spade' })).toBeDefined()
  await lots.remove(row())
  expect(lots.rows).toEqual([])
})
