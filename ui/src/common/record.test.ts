// Records are taken apart only where there is something to take.
import { expect, it } from 'vitest'
import { grouped, without } from './record'

it('is another record without the key, and the same one where there is no such key', () => {
  const record = { height: '1 m', length: '9 m' }
  expect(without(record, 'height')).toEqual({ length: '9 m' })
  expect(record).toEqual({ height: '1 m', length: '9 m' })
  expect(without(record, 'toString')).toEqual(record)
  expect(without(record, 'width')).toBe(record)
})

it('keeps rows under their headings in the order they come', () => {
  const rows = [['frame', 1], ['string', 2], ['frame', 3]] as const
  expect(grouped(rows, ([heading]) => heading)).toEqual([
    ['frame', [rows[0], rows[2]]],
    ['string', [rows[1]]],
  ])
})
