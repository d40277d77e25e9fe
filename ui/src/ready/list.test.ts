import { expect, it } from 'vitest'
import type { WrittenToDo } from '../bindings'
import { byDate, isLate, isReminder, neighbour, words } from './list'

const toDo = (id: string, date: string, more: Partial<WrittenToDo> = {}): WrittenToDo => ({
  id, part: 'venue', text: id, by: date && `the day ${date}`, date, done: false, counts: true, ...more,
})

it('stands under its dates in the order given, last what has none', () => {
  const due = byDate([toDo('a', '2027-03-01'), toDo('b', '2027-03-01'), toDo('c', '2027-04-01'), toDo('d', '')], '2027-03-15')
  expect(due.map((it) => it.heading)).toEqual(['By the day 2027-03-01', 'By the day 2027-04-01', 'Without a date'])
  expect(due[0]?.items.map((it) => it.id)).toEqual(['a', 'b'])
  expect(due.map((it) => it.passed)).toEqual(['late', '', ''])
})

it('shows unasked what presses: what is late or next, and what the plan itself found among reminders', () => {
  const reminder = (id: string, date: string) => toDo(id, date, { counts: false })
  const pressing = (all: WrittenToDo[]) => byDate(all, '2027-03-15').filter((it) => it.pressing).map((it) => it.date)
  const dates = ['2027-03-01', '2027-03-20', '2027-03-30', '2027-04-05']
  expect(pressing(dates.map((date) => toDo(date, date)))).toEqual(['2027-03-01', '2027-03-20'])
  expect(pressing([...dates.map((date) => reminder(date, date)), toDo('stone', '2027-04-05')])).toEqual([
    '2027-03-01', '2027-03-20', '2027-04-05',
  ])
  expect(pressing(dates.map((date) => toDo(date, date, { done: true, counts: false })))).toEqual([])
})

it('says how much is left of a date', () => {
  const left = byDate([toDo('a', '1'), toDo('b', '1', { done: true }), toDo('c', '2', { done: true })], '0').map((it) => it.left)
  expect(left).toEqual(['1 to see to', 'all done'])
})

it('is late the day after its date, unless done or without one', () => {
  expect(isLate(toDo('a', '2027-03-15'), '2027-03-15')).toBe(false)
  expect(isLate(toDo('a', '2027-03-15'), '2027-03-16')).toBe(true)
  expect(isLate(toDo('a', '2027-03-15', { done: true }), '2027-03-16')).toBe(false)
  expect(isLate(toDo('a', ''), '2027-03-16')).toBe(false)
})

it('has only passed where nothing counts yet', () => {
  const reminder = toDo('a', '2027-03-15', { counts: false })
  expect(byDate([reminder], '2027-03-16')[0]?.passed).toBe('passed')
  expect(byDate([{ ...reminder, done: true }], '2027-03-16')[0]?.passed).toBe('')
  expect(isReminder(reminder)).toBe(true)
  expect(isReminder({ counts: false, done: true })).toBe(false)
})

it('says in words what it is, and that it counts where others do not', () => {
  const counting = toDo('a', '2027-03-15')
  expect(words(counting, '2027-03-16', true)).toBe('late')
  expect(words(counting, '2027-03-14', true)).toBe('counts already')
  expect(words(counting, '2027-03-14', false)).toBe('')
  expect(words(toDo('a', '2027-03-15', { counts: false }), '2027-03-16', true)).toBe('')
  expect(words(toDo('a', '2027-03-15', { counts: false, done: true }), '2027-03-16', true)).toBe('done')
})

it('gives the keyboard to a neighbour when it leaves', () => {
  const shown = [{ id: 'a' }, { id: 'b' }]
  expect(neighbour(shown, 'a')).toBe('b')
  expect(neighbour(shown, 'b')).toBe('a')
  expect(neighbour([{ id: 'a' }], 'a')).toBeUndefined()
})
