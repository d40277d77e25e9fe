// The newest question wins, pages turn within the document, and out of sight nothing is asked.
import { beforeEach, expect, it, vi } from 'vitest'
import type { Reply } from '../backend'
import type { PagePreview, PagesAsked } from '../bindings'
import { AWAY_MS, Sheet } from './sheet.svelte'

const document = (name: string) => ({ name, title: name, what: '', private: false, wanted: true })
const PAGES = 3

let waiting: (() => void)[]
let held: boolean
let alone: boolean
const previewPage = vi.fn(async (name: string, page: number, asked: PagesAsked): Promise<Reply<PagePreview>> => {
  if (held) await new Promise<void>((go) => waiting.push(go))
  const value = { svg: `${name} ${page}${asked.large_print ? ' large' : ''}`, page: page > PAGES ? PAGES : page, pages: PAGES, alone, places: [], own: [] }
  return { ok: true, value }
})
const leavePages = vi.fn(async (): Promise<Reply<null>> => ({ ok: true, value: null }))
const printing = { documents: [document('ready-list'), document('run-sheet')], asked: { large_print: false, students: null as number[] | null } }
let sheet: Sheet

beforeEach(async () => {
  vi.clearAllMocks()
  waiting = []
  held = false
  alone = false
  printing.asked = { large_print: false, students: null }
  sheet = new Sheet({ previewPage, leavePages }, printing)
  await sheet.open()
})

it('begins at the first document and turns pages within it', async () => {
  expect(sheet.shown?.svg).toBe('ready-list 1')
  expect(sheet.first).toBe(true)
  await sheet.turn(-1)
  expect(previewPage).toHaveBeenCalledTimes(1)
  await sheet.turn(1)
  await sheet.turn(1)
  expect(sheet.shown?.page).toBe(3)
  expect(sheet.last).toBe(true)
  await sheet.turn(1)
  expect(previewPage).toHaveBeenCalledTimes(3)
})

it('counts pages turned faster than they come, and shows the newest alone', async () => {
  held = true
  const turns = [sheet.turn(1)]
  await vi.waitFor(() => expect(waiting.length).toBe(1))
  turns.push(sheet.turn(1))
  waiting[0]?.()
  await turns[0]
  expect(sheet.shown?.page).toBe(1)
  await vi.waitFor(() => expect(waiting.length).toBe(2))
  waiting[1]?.()
  await turns[1]
  expect(sheet.shown?.page).toBe(3)
  expect(sheet.busy).toBe(false)
})

it('asks the moment the course changes, before the window shows what has changed', async () => {
  for (const times of [2, 3]) {
    sheet.courseChanged()
    expect(previewPage).toHaveBeenCalledTimes(times)
    await vi.waitFor(() => expect(sheet.busy).toBe(false))
  }
})

it('asks about a document once at a time however often the course changes, and about another at once', async () => {
  held = true
  for (let typed = 0; typed < 5; typed += 1) sheet.courseChanged()
  await vi.waitFor(() => expect(waiting.length).toBe(1))
  const other = sheet.pick('run-sheet')
  expect(sheet.late).toBe(true)
  await vi.waitFor(() => expect(waiting.length).toBe(2))
  waiting[1]?.()
  await other
  expect(sheet.late).toBe(false)
  expect(sheet.shown?.svg).toBe('run-sheet 1')
  waiting[0]?.()
  await new Promise((later) => setTimeout(later))
  expect(sheet.shown?.svg).toBe('run-sheet 1')
  expect(previewPage).toHaveBeenCalledTimes(3)
})

it('goes down the list and not beyond its ends; another document begins at its first page', async () => {
  await sheet.turn(1)
  expect(sheet.step(1)).toBe('run-sheet')
  expect(sheet.step(1)).toBeUndefined()
  await vi.waitFor(() => expect(sheet.shown?.svg).toBe('run-sheet 1'))
  expect(sheet.step(-1)).toBe('ready-list')
})

it('is drawn anew when the course changes, in the size asked for, and only in sight', async () => {
  await sheet.turn(1)
  printing.asked.large_print = true
  sheet.courseChanged()
  await vi.waitFor(() => expect(sheet.shown?.svg).toBe('ready-list 2 large'))
  sheet.close()
  previewPage.mockClear()
  sheet.courseChanged()
  expect(previewPage).not.toHaveBeenCalled()
})

it('is drawn anew once the course is advised only where its piece was set without the others', async () => {
  sheet.courseChanged(true)
  expect(previewPage).toHaveBeenCalledTimes(1)
  alone = true
  sheet.courseChanged()
  await vi.waitFor(() => expect(sheet.shown?.alone).toBe(true))
  alone = false
  sheet.courseChanged(true)
  await vi.waitFor(() => expect(sheet.shown?.alone).toBe(false))
  expect(previewPage).toHaveBeenCalledTimes(3)
})

it('keeps the page that was there when a new one can not be made, and says why', async () => {
  const trouble = { code: 'template', key: '', what: 'broken', cure: '' }
  previewPage.mockResolvedValueOnce({ ok: false, trouble })
  await sheet.redraw()
  expect(sheet.trouble).toEqual(trouble)
  expect(sheet.shown?.svg).toBe('ready-list 1')
})

it('asks for no page while no student is chosen', async () => {
  printing.asked.students = []
  previewPage.mockClear()
  await sheet.redraw()
  expect(previewPage).not.toHaveBeenCalled()
  expect(sheet.busy).toBe(false)
})

it('tells Rust once when it has been out of sight for long, and not when it comes back before', async () => {
  vi.useFakeTimers()
  sheet.close()
  vi.advanceTimersByTime(AWAY_MS - 1)
  await sheet.open()
  vi.advanceTimersByTime(2 * AWAY_MS)
  expect(leavePages).not.toHaveBeenCalled()
  sheet.close()
  sheet.close()
  vi.advanceTimersByTime(2 * AWAY_MS)
  expect(leavePages).toHaveBeenCalledTimes(1)
  vi.useRealTimers()
})
