// Paper: pages are set, held while the system asks, and let go of; a refusal or a stop prints nothing.
import { beforeEach, expect, it, vi } from 'vitest'
import type { Reply } from '../backend'
import type { PagesAsked, PaperEnd, PaperSheets, Printing as Progress } from '../bindings'
import { Paper } from './paper.svelte'

const yes = <T>(value: T): Reply<T> => ({ ok: true, value })
const trouble = { code: 'template', key: '', what: 'broken', cure: 'mend it' }
const no = { ok: false, trouble } as const
const sheet = { svg: '<svg/>', width_pt: 595, height_pt: 842, sideways: false }
const SHEETS: PaperSheets = { sheets: [sheet, sheet], letter: true, unprintable: '石', own: [] }
const CHOICE = { wanted: ['run-sheet', 'load-list'], asked: { large_print: true, students: [1] } }

let heldWhileAsked: number | undefined
let end: PaperEnd
const paperSheets = vi.fn(
  async (_names: string[], _asked: PagesAsked, tell: (progress: Progress) => void): Promise<Reply<PaperSheets | null>> => {
    tell({ at: 1, of: 2, title: 'Run sheet', pages: 0, last: 0 })
    return yes(SHEETS)
  },
)
const printSheets = vi.fn(async (): Promise<Reply<PaperEnd>> => {
  heldWhileAsked = paper.held?.sheets.length
  return yes(end)
})
const stopPrint = vi.fn(async () => yes(null))
const settle = vi.fn(async () => {})
const ready = vi.fn(async () => {})
let paper: Paper

beforeEach(() => {
  vi.clearAllMocks()
  heldWhileAsked = undefined
  end = 'sent'
  paper = new Paper({ paperSheets, printSheets, stopPrint }, settle, ready)
})

it('sets what is chosen, holds it while a printer is chosen, and lets go of it', async () => {
  await paper.print(CHOICE)
  expect(settle).toHaveBeenCalledBefore(paperSheets)
  expect(paperSheets).toHaveBeenCalledWith(CHOICE.wanted, CHOICE.asked, expect.any(Function))
  expect(ready).toHaveBeenCalledBefore(printSheets)
  expect(printSheets).toHaveBeenCalledWith(true)
  expect(heldWhileAsked).toBe(2)
  expect(paper.held).toBeUndefined()
  expect(paper.busy).toBe(false)
  expect(paper.outcome).toEqual({ end: 'sent', pages: 2, unprintable: '石', own: [] })
})

it('holds the pages until the system has done, where it answers at once', async () => {
  end = 'asking'
  const printed = paper.print(CHOICE)
  await vi.waitFor(() => expect(printSheets).toHaveBeenCalled())
  expect(paper.held?.sheets.length).toBe(2)
  paper.afterPrint()
  await printed
  expect(paper.held).toBeUndefined()
})

it('lets go when nobody chooses a printer, and says so', async () => {
  end = 'not-sent'
  await paper.print(CHOICE)
  expect(paper.outcome?.end).toBe('not-sent')
  expect(paper.held).toBeUndefined()
})

it.each([true, false])('asks for no printer when it was stopped, in the last document too: %s', async (late) => {
  paperSheets.mockImplementationOnce(async () => {
    await paper.stop()
    return yes(late ? SHEETS : null)
  })
  await paper.print(CHOICE)
  expect(stopPrint).toHaveBeenCalledOnce()
  expect(printSheets).not.toHaveBeenCalled()
  expect(paper.outcome?.end).toBe('stopped')
  await paper.print(CHOICE)
  expect(paper.outcome?.end).toBe('sent')
})

it('says why there are no pages, no printer, or no picture of a page, and is ready for another try', async () => {
  const tries = [
    () => paperSheets.mockResolvedValueOnce(no),
    () => printSheets.mockResolvedValueOnce(no),
    () => ready.mockRejectedValueOnce(new Error('no picture')),
  ]
  for (const fails of tries) {
    fails()
    await paper.print(CHOICE)
    expect(paper.trouble?.cure).toBeTruthy()
    expect(paper.outcome).toBeUndefined()
    expect(paper.held).toBeUndefined()
    expect(paper.busy).toBe(false)
  }
  await paper.print(CHOICE)
  expect(paper.trouble).toBeUndefined()
})

it('prints nothing when nothing is chosen, and once at a time', async () => {
  await paper.print({ ...CHOICE, wanted: [] })
  expect(paperSheets).not.toHaveBeenCalled()
  await Promise.all([paper.print(CHOICE), paper.print(CHOICE)])
  expect(paperSheets).toHaveBeenCalledOnce()
})
