import { expect, it, vi } from 'vitest'
import type { RosterPreview, View } from '../bindings'
import { RosterPaste } from './paste.svelte'

const PREVIEW: RosterPreview = { added: ['Ann, novice'], changed: [], same: 0, not_in_list: [] }

function made() {
  const rust = {
    lookAtRoster: vi.fn(async () => ({ ok: true as const, value: PREVIEW })),
    takeInRoster: vi.fn(async () => ({ ok: true as const, value: {} as View })),
  }
  const course = { tell: vi.fn(async (question: () => Promise<unknown>) => void (await question())) }
  return { rust, paste: new RosterPaste(rust, course as never) }
}

it('looks before it takes in, and is empty afterwards', async () => {
  const { rust, paste } = made()
  paste.type('Ann')
  await paste.look()
  expect(paste.preview).toBe(PREVIEW)
  expect(rust.takeInRoster).not.toHaveBeenCalled()
  await paste.takeIn(true)
  expect(rust.takeInRoster).toHaveBeenCalledWith('Ann', true)
  expect([paste.text, paste.preview]).toEqual(['', undefined])
  expect(paste.said).toContain('taken in')
})

it('shows no preview of lines that are not there any more', async () => {
  const { paste } = made()
  paste.type('Ann')
  const looking = paste.look()
  paste.type('Ann\nBen')
  await looking
  expect(paste.preview).toBeUndefined()
})

it('keeps the lines that were refused', async () => {
  const { rust, paste } = made()
  const trouble = { code: 'not-a-roster', key: '', what: 'w', cure: 'row 1: c' }
  rust.lookAtRoster.mockResolvedValueOnce({ ok: false, trouble } as never)
  paste.type('Ann, mason')
  await paste.look()
  expect([paste.text, paste.trouble]).toEqual(['Ann, mason', trouble])
})
