// Printing asks for a folder when there is none, and prints what is ticked.
import { beforeEach, describe, expect, it, vi } from 'vitest'
import type { Reply } from '../backend'
import type { Printed } from '../bindings'
import { Printing } from './printing.svelte'

const yes = <T>(value: T): Reply<T> => ({ ok: true, value })
const document = (name: string) => ({ name, title: name, what: '' })

let folder: string | null
let chosen: string | null
const print = vi.fn(async (names: string[]) => yes<Printed>({ folder: 'there', files: names, unprintable: '' }))
const settle = vi.fn(async () => {})
const rust = {
  documents: async () => yes([document('run-sheet'), document('load-list')]),
  printFolder: async () => yes(folder),
  choosePrintFolder: async () => yes(chosen),
  print,
  showPrinted: async () => yes(null),
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
    expect(print).toHaveBeenCalledWith(['run-sheet', 'load-list'])
    expect(printing.printed?.files).toEqual(['run-sheet', 'load-list'])
    expect(settle).toHaveBeenCalledBefore(print)
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
