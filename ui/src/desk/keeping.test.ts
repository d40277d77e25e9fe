import { expect, it, vi } from 'vitest'
import type { Reply } from '../backend'
import type { Keeping, Trouble, View } from '../bindings'
import { Course } from '../common/course.svelte'
import { OpenKeeping } from './keeping.svelte'
import type { Answer } from './notes'

const view = (file: string) => ({ file, unsaved: false, advised: true, values: {} }) as unknown as View
const good = (file: string): Promise<Reply<View>> => Promise.resolve({ ok: true, value: view(file) })
const calm: Keeping = { kept: [], outside: 'same', elsewhere: false, broken: [] }

function open() {
  let tell: (now: Keeping) => void = () => {}
  const rust = {
    keeping: vi.fn((heard: typeof tell) => {
      tell = heard
      return Promise.resolve({ ok: true as const, value: null })
    }),
    takeKept: vi.fn(() => good('taken')),
    leaveKept: vi.fn(() => Promise.resolve({ ok: true as const, value: null })),
    readAnew: vi.fn(() => good('anew')),
    keepMine: vi.fn(() => good('mine')),
    saveOver: vi.fn(() => good('over')),
    save: vi.fn(() => good('saved')),
    saveAs: vi.fn(() => good('elsewhere')),
  }
  const course = new Course({ edit: () => good('edited') })
  const doing = { open: vi.fn(async () => {}), save: vi.fn(async () => {}) }
  const keeping = new OpenKeeping(rust, course, doing)
  void keeping.listen()
  return { rust, course, doing, keeping, tell: (now: Partial<Keeping>) => tell({ ...calm, ...now }) }
}

const refused: Trouble = { code: 'changed-outside', key: '', what: 'one.walling has been changed', cure: '' }
/** Answers the first note, as a click on its button does. */
async function answer(keeping: OpenKeeping, answer: Answer) {
  const [note] = keeping.notes
  if (note) await keeping.answer(note, answer)
}
const ids = ({ notes }: OpenKeeping) => notes.map((note) => note.id)

it('turns a save that another program stands in the way of into a question, until the file is as it was', async () => {
  const { keeping, course, tell, doing, rust } = open()
  tell({ outside: 'changed' })
  expect(ids(keeping)).toEqual(['changed'])
  course.trouble = refused
  keeping.saved()
  expect(course.trouble).toBeUndefined()
  expect(ids(keeping)).toEqual(['overwrite'])
  await answer(keeping, 'overwrite')
  expect(doing.save).toHaveBeenCalledWith(rust.saveOver)
  tell({})
  expect(ids(keeping)).toEqual([])
})

it('points to the note about the other window when that is the one that saves', () => {
  const { keeping, course, tell } = open()
  tell({ elsewhere: true })
  expect(keeping.notes.map(({ pressing }) => pressing)).toEqual([false])
  course.trouble = { ...refused, code: 'open-elsewhere' }
  keeping.saved()
  expect(course.trouble).toBeUndefined()
  expect(keeping.notes.map(({ pressing }) => pressing)).toEqual([true])
  tell({})
  expect(ids(keeping)).toEqual([])
})

it('leaves another refusal to be told as it is', () => {
  const { keeping, course } = open()
  course.trouble = { ...refused, code: 'can-not-write' }
  keeping.saved()
  expect(course.trouble?.code).toBe('can-not-write')
  expect(ids(keeping)).toEqual([])
})

it('goes back to the note when the answer is not to save', async () => {
  const { keeping, course, tell } = open()
  tell({ outside: 'mine' })
  course.trouble = refused
  keeping.saved()
  await answer(keeping, 'dontSave')
  expect(ids(keeping)).toEqual(['mine'])
})

it('takes what belongs to the open course in its place, and opens another for the rest', async () => {
  const { keeping, course, tell, doing, rust } = open()
  const kept = { id: 'a', title: '', file: 'x', folder: '', when: '', changes: [], here: true, since: false }
  tell({ kept: [kept] })
  await answer(keeping, 'take')
  expect(rust.takeKept).toHaveBeenCalledWith('a')
  expect(course.view?.file).toBe('taken')
  tell({ kept: [{ ...kept, here: false }] })
  await answer(keeping, 'take')
  expect(doing.open).toHaveBeenCalledOnce()
})

it('lets kept changes go only when asked for it twice', async () => {
  const { keeping, tell, rust } = open()
  tell({ kept: [{ id: 'a', title: '', file: 'x', folder: '', when: '', changes: [], here: true, since: false }] })
  await answer(keeping, 'leave')
  expect(rust.leaveKept).not.toHaveBeenCalled()
  await answer(keeping, 'leaveForGood')
  expect(rust.leaveKept).toHaveBeenCalledWith('a')
})
