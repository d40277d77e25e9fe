// Printing asks for a folder when there is none, and prints what is ticked.
import { beforeEach, describe, expect, it, vi } from 'vitest'
import type { Reply } from '../backend'
import type { PagesAsked, Printed, Printing as Progress } from '../bindings'
import { Printing } from './printing.svelte'

const yes = <T>(value: T): Reply<T> => ({ ok: true, value })
const document = (name: string, isPrivate = false) => ({ name, title: name, what: '', private: isPrivate, wanted: !isPrivate })

let folder: string | null
let chosen: string | null
const print = vi.fn(async (names: string[], _asked: PagesAsked, tell: (progress: Progress) => void) => {
  tell({ at: 1, of: names.length, title: 'Run sheet', pages: 0, last: 0 })
  return yes<Printed>({ folder: 'there', files: names, pages: 5, left: 0, unprintable: '', own: [] })
})
const stopPrint = vi.fn(async () => yes(null))
const USUAL = { large_print: false, students: null }
const settle = vi.fn(async () => {})
const rust = {
  documents: async () => yes([document('run-sheet'), document('load-list'), document('contacts-sheet', true)]),
  printFolder: async () => yes(folder),
  choosePrintFolder: async () => yes(chosen),
  print,
  stopPrint,
  showPrinted: async () => yes(null),
  paperSheets: async () => yes(null),
  printSheets: async () => yes('sent' as const),
}
let printing: Printing

beforeEach(async () => {
  vi.clearAllMocks()
  folder = 'there'
  chosen = null
  printing = new Printing(rust, settle)
  await printing.look()
})

describe('printing', () => {
  it('takes every document but those that were unticked, in their order', async () => {
    expect(printing.wanted).toEqual(['run-sheet', 'load-list'])
    printing.want('run-sheet', false)
    expect(printing.wanted).toEqual(['load-list'])
    printing.want('run-sheet', true)
    await printing.print()
    expect(print).toHaveBeenCalledWith(['run-sheet', 'load-list'], USUAL, expect.any(Function))
    expect(printing.printed?.files).toEqual(['run-sheet', 'load-list'])
    expect(settle).toHaveBeenCalledBefore(print)
  })

  it('leaves out what is private until it is ticked, and again for another course', async () => {
    printing.want('contacts-sheet', true)
    expect(printing.wanted).toEqual(['run-sheet', 'load-list', 'contacts-sheet'])
    printing.want('contacts-sheet', false)
    expect(printing.wanted).toEqual(['run-sheet', 'load-list'])
    printing.want('contacts-sheet', true)
    printing.want('run-sheet', false)
    printing.forget()
    expect(printing.wanted).toEqual(['run-sheet', 'load-list'])
  })

  it('ticks none and the usual ones at once', () => {
    printing.want('contacts-sheet', true)
    printing.wantNone()
    expect(printing.wanted).toEqual([])
    printing.wantUsual()
    expect(printing.wanted).toEqual(['run-sheet', 'load-list'])
  })

  it('prints in the size and for the students that were chosen', async () => {
    printing.large = true
    printing.wantStudent(1, false, 3)
    await printing.print()
    expect(print.mock.lastCall?.[1]).toEqual({ large_print: true, students: [0, 2] })
    printing.wantStudent(1, true, 3)
    expect(printing.students).toBeNull()
  })

  it('says how far it has come while it prints, and stops', async () => {
    const second = { at: 2, of: 2, title: 'Load list', pages: 3, last: 3 }
    let finish = () => {}
    print.mockImplementationOnce(async (names, _asked, tell) => {
      tell(second)
      await new Promise<void>((done) => (finish = done))
      return yes<Printed>({ folder: 'there', files: names.slice(1), pages: 2, left: 1, unprintable: '', own: [] })
    })
    const printed = printing.print()
    await vi.waitFor(() => expect(printing.progress).toEqual(second))
    await printing.stop()
    expect(stopPrint).toHaveBeenCalledOnce()
    expect(printing.stopping).toBe(true)
    finish()
    await printed
    expect(printing.progress).toBeUndefined()
    expect(printing.printed?.left).toBe(1)
  })

  it('asks for a folder first, and prints nothing if none is chosen', async () => {
    folder = null
    await printing.look()
    await printing.print()
    expect(print).not.toHaveBeenCalled()
    chosen = 'here'
    await printing.print()
    expect(print).toHaveBeenCalledTimes(1)
    expect(printing.folder).toBe('here')
  })

  it('says what went wrong, and is ready for another try', async () => {
    const full = { code: 'full', key: '', what: 'the disk is full', cure: 'make room' }
    print.mockResolvedValueOnce({ ok: false, trouble: full } as unknown as Reply<Printed> & { ok: true })
    await printing.print()
    expect(printing.trouble).toEqual(full)
    expect(printing.busy).toBe(false)
    await printing.print()
    expect(printing.trouble).toBeUndefined()
  })

  it('prints nothing when nothing is ticked', async () => {
    for (const name of ['run-sheet', 'load-list']) printing.want(name, false)
    await printing.print()
    expect(print).not.toHaveBeenCalled()
  })
})
