// A pace book's file: looked at, taken in, left, refused.
import { expect, it } from 'vitest'
import type { Reply } from '../backend'
import type { PaceBook, PacePreview } from '../bindings'
import { BookFile } from './book-file.svelte'

const EMPTY: PaceBook = { notice: '', recorded: false, changed: false, record: [], courses: [], rates: [] }
const PREVIEW: PacePreview = { file: 'pace.csv', added: ['Hollin Bank'], changed: [], same: 0, not_in_file: [] }
const REFUSED: Reply<never> = { ok: false, trouble: { code: 'absurd-pace', key: '', what: 'refused', cure: 'row 2' } }

const file = (answers: { look?: Reply<PacePreview | null>; take?: Reply<PaceBook>; write?: Reply<string | null> } = {}) => {
  const books: PaceBook[] = []
  const rust = {
    lookAtPaceFile: async () => answers.look ?? { ok: true as const, value: PREVIEW },
    takeInPaceFile: async () => answers.take ?? { ok: true as const, value: EMPTY },
    exportPaceBook: async () => answers.write ?? { ok: true as const, value: '/walls/pace.csv' },
  }
  return { open: new BookFile(rust, async (book) => void books.push(book)), books }
}

it('shows what a file would change, and the book after it was taken in', async () => {
  const { open, books } = file()
  await open.look()
  expect([open.preview, books]).toEqual([PREVIEW, []])
  await open.takeIn()
  expect([open.preview, books]).toEqual([undefined, [EMPTY]])
  expect(open.told).toContain('pace.csv has been taken in')
  await open.write()
  expect(open.told).toBe('Written to /walls/pace.csv.')
})

it('says why a file was refused, and forgets it when the next is dropped', async () => {
  const { open } = file({ look: REFUSED })
  await open.look()
  expect([open.preview, open.trouble?.cure]).toEqual([undefined, 'row 2'])
  open.dropped(PREVIEW)
  expect([open.preview, open.trouble]).toEqual([PREVIEW, undefined])
})

it('says nothing where the person thought better of it, and takes nothing for taken in that was refused', async () => {
  const { open, books } = file({ look: { ok: true, value: null }, write: { ok: true, value: null }, take: REFUSED })
  await open.look()
  await open.write()
  expect([open.preview, open.told]).toEqual([undefined, ''])
  await open.takeIn()
  expect([open.told, open.trouble?.what, books]).toEqual(['', 'refused', []])
})
