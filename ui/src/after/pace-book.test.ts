// The pace book: read, recorded into, taken back from.
import { expect, it } from 'vitest'
import type { Reply } from '../backend'
import type { PaceBook } from '../bindings'
import { OpenPaceBook } from './pace-book.svelte'

const EMPTY: PaceBook = { notice: '', recorded: false, changed: false, record: [], courses: [], rates: [] }
const REFUSED_FILE: Reply<never> = { ok: false, trouble: { code: 'no-file', key: '', what: 'no file here', cure: '' } }
const NO_FILE = { lookAtPaceFile: async () => REFUSED_FILE, takeInPaceFile: async () => REFUSED_FILE, exportPaceBook: async () => REFUSED_FILE }
const REFUSED: Reply<PaceBook> = { ok: false, trouble: { code: 'never-saved', key: '', what: 'not saved', cure: '' } }

const book = (answers: Partial<Record<'paceBook' | 'recordPace' | 'takeBackPace' | 'takeBackPaceOf', Reply<PaceBook>>>, order: string[] = []) => {
  const answer = (name: keyof typeof answers) => async () => {
    order.push(name)
    return answers[name] ?? { ok: true as const, value: EMPTY }
  }
  const rust = { paceBook: answer('paceBook'), recordPace: answer('recordPace'), takeBackPace: answer('takeBackPace'), takeBackPaceOf: answer('takeBackPaceOf'), ...NO_FILE }
  return new OpenPaceBook(rust, async () => void order.push('what was typed'), async () => void order.push('planned anew'))
}

it('sends what was typed before it asks', async () => {
  const order: string[] = []
  await book({}, order).record()
  expect(order).toEqual(['what was typed', 'recordPace'])
})

it('says what was done, and shows the book after it', async () => {
  const open = book({ recordPace: { ok: true, value: { ...EMPTY, recorded: true } } })
  await open.record()
  expect(open.shown?.recorded).toBe(true)
  expect(open.said).toContain('Recorded')
  await open.takeBack()
  expect(open.said).toContain('not in the book')
})

it('keeps showing the book when something is refused, and says why', async () => {
  const open = book({ recordPace: REFUSED, takeBackPace: REFUSED })
  await open.look()
  await open.record()
  expect(open.shown).toEqual(EMPTY)
  expect([open.trouble?.what, open.said]).toEqual(['not saved', ''])
  await open.takeBack()
  expect(open.said).toBe('')
})

it('asks once before a course goes, and plans anew afterwards', async () => {
  const order: string[] = []
  const open = book({}, order)
  await open.takeOut(1, 'Hollin Bank')
  expect([order, open.asking]).toEqual([[], 1])
  await open.takeOut(1, 'Hollin Bank')
  expect(order).toEqual(['what was typed', 'takeBackPaceOf', 'planned anew'])
  expect(open.said).toContain('Hollin Bank')
  await open.takeOut(0, 'Another')
  await open.takeOut(2, 'A third')
  expect(open.asking).toBe(2)
})
