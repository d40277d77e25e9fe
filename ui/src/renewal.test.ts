// A view is put together from what was told, and what was not told stays the same object.
import { expect, it } from 'vitest'
import type { Reply } from './backend'
import type { Difference, Renewed, View } from './bindings'
import { Renewal } from './renewal'

const whole = (number: number, view: object): Reply<Renewed> => ({ ok: true, value: { number, whole: view as View, changes: [] } })
const other = (number: number, ...changes: Difference[]): Reply<Renewed> => ({ ok: true, value: { number, whole: null, changes } })

function shown(reply: ReturnType<Renewal['taken']>): unknown {
  return reply.ok ? reply.value : undefined
}

it('keeps what was not told of the view before', () => {
  const renewal = new Renewal()
  const kit = { lines: [{ need: '1' }, { need: '2' }] }
  const rules: string[] = []
  const first = { file: 'a', rules, written: { kit, stone: 1 } }
  renewal.taken(whole(1, first))
  const next = shown(renewal.taken(other(2,
    { at: ['file'], now: 'b' }, { at: ['written', 'kit', 'lines', '1', 'need'], now: '3' }, { at: ['written', 'kit', 'lines', '0'], now: null })))
  expect(next).toEqual({ file: 'b', rules: [], written: { kit: { lines: [null, { need: '3' }] }, stone: 1 } })
  expect((next as typeof first).rules).toBe(rules)
  expect(first.file).toBe('a')
  expect(kit.lines[1]?.need).toBe('2')
})

it('is the view before where nothing is other', () => {
  const renewal = new Renewal()
  const first = shown(renewal.taken(whole(1, { file: 'a' })))
  expect(shown(renewal.taken(other(2)))).toBe(first)
})

it('knows the number of what it was told last, and keeps nothing of it where all is told', () => {
  const renewal = new Renewal()
  expect(renewal.known).toBeNull()
  renewal.taken(whole(4, { file: 'a' }))
  renewal.taken({ ok: false, trouble: { code: 'no', key: '', what: '', cure: '' } })
  expect(renewal.known).toBe(4)
  expect(shown(renewal.taken(whole(5, { rules: [] })))).toEqual({ rules: [] })
  expect(renewal.known).toBe(5)
})
