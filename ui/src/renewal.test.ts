// A view is put together from what was told, and what was not told stays the same object.
import { expect, it } from 'vitest'
import type { Renewed, View } from './bindings'
import { Renewal } from './renewal'

const told = (number: number, before: number | null, view: object, written = {}, drawings = {}) =>
  ({ ok: true, value: { number, before, view, written, drawings } as Renewed }) as const

function shown(reply: ReturnType<Renewal['taken']>): View {
  if (!reply.ok) throw new Error('refused')
  return reply.value
}

it('keeps what was not told of the view before', () => {
  const renewal = new Renewal()
  const first = shown(renewal.taken(told(1, null, { file: 'a', rules: [] }, { kit: { lines: [] }, stone: 1 }, { section: '<svg/>' })))
  const next = shown(renewal.taken(told(2, 1, { file: 'b' }, { stone: 2 })))
  expect(next).toEqual({ file: 'b', rules: [], written: { kit: { lines: [] }, stone: 2 }, drawings: { section: '<svg/>' } })
  expect(next.written.kit).toBe(first.written.kit)
  expect(first.file).toBe('a')
})

it('knows the number of what it was told last', () => {
  const renewal = new Renewal()
  expect(renewal.known).toBeNull()
  renewal.taken(told(4, null, {}))
  renewal.taken({ ok: false, trouble: { code: 'no', key: '', what: '', cure: '' } })
  expect(renewal.known).toBe(4)
})

it('keeps nothing of the view before where all was told', () => {
  const renewal = new Renewal()
  renewal.taken(told(1, null, { file: 'a' }, { stone: 1 }))
  expect(shown(renewal.taken(told(3, null, { rules: [] })))).toEqual({ rules: [], written: {}, drawings: {} })
})
