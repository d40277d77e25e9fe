import { describe, expect, it } from 'vitest'
import type { Lot } from '../bindings'
import { holding, inOrder, rowsOf, typedOf } from './rows'

const lot = (item: string, more: Partial<Lot> = {}): Lot => ({
  item, unit: '', owner: '', good: 1, care: 0, broken: 0, mass: '', note: '', ...more,
})
let ids = 0
const id = () => `${(ids += 1)}`
const items = (rows: readonly { lot: Lot }[]) => rows.map((row) => row.lot.item)

describe('rows', () => {
  const first = rowsOf([], [lot('Bar'), lot('Gauge'), lot('Spade')], id)

  it('stand as the store has them', () => expect(items(first)).toEqual(['Bar', 'Gauge', 'Spade']))

  it('keep their ids when a count changes', () => {
    const then = rowsOf(first, [lot('Bar', { good: 7 }), lot('Gauge'), lot('Spade')], id)
    expect(then.map((row) => row.id)).toEqual(first.map((row) => row.id))
    expect(then[0]?.lot.good).toBe(7)
  })

  it('show one that was added first, then where it belongs', () => {
    const lots = [lot('Bar'), lot('Gauge'), lot('Line'), lot('Spade')]
    const then = rowsOf(first, lots, id)
    expect(items(then)).toEqual(['Line', 'Bar', 'Gauge', 'Spade'])
    expect(items(inOrder(then, lots))).toEqual(['Bar', 'Gauge', 'Line', 'Spade'])
  })

  it('stay where they are, under their id, when renamed or given to another owner', () => {
    const then = rowsOf(first, [lot('Gauge'), lot('Spade'), lot('Steel bar')], id)
    expect(items(then)).toEqual(['Steel bar', 'Gauge', 'Spade'])
    expect(then[0]?.id).toBe(first[0]?.id)
    const given = rowsOf(first, [lot('Bar'), lot('Gauge', { owner: 'Club' }), lot('Spade')], id)
    expect(given[1]?.id).toBe(first[1]?.id)
  })

  it('go with their lot, and come many at a time as the store has them', () => {
    expect(items(rowsOf(first, [lot('Bar'), lot('Spade')], id))).toEqual(['Bar', 'Spade'])
    const many = rowsOf(first, [lot('Axe'), lot('Bar'), lot('Board'), lot('Gauge')], id)
    expect(items(many)).toEqual(['Axe', 'Bar', 'Board', 'Gauge'])
    expect(many[1]?.id).toBe(first[0]?.id)
  })

  it('tell two owners of one item apart', () => {
    const two = rowsOf([], [lot('Spade'), lot('Spade', { owner: 'Club' })], id)
    expect(new Set(two.map((row) => row.id)).size).toBe(2)
  })
})

it('are found by every word of item, owner or note, whatever its capitals', () => {
  const rows = rowsOf([], [lot('Spade', { owner: 'Upper Dale Club' }), lot('Bar', { note: 'bent at the DALE' })], id)
  expect(items(holding(rows, 'dale'))).toEqual(['Spade', 'Bar'])
  expect(items(holding(rows, ' dale SPADE '))).toEqual(['Spade'])
  expect(items(holding(rows, 'wheel'))).toEqual([])
  expect(holding(rows, '  ')).toBe(rows)
})

it('are typed over as text, no count being an empty field', () => {
  expect(typedOf(lot('Spade', { good: 4, mass: '1.6 kg' }))).toEqual({
    item: 'Spade', unit: '', owner: '', good: '4', care: '', broken: '', mass: '1.6 kg', note: '',
  })
})
