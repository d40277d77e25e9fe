import { expect, it } from 'vitest'
import { worksheetWords } from './worksheets'

it('says how the worksheets differ from the usual ones', () => {
  const of = (values: Record<string, string>) => worksheetWords((key) => values[key] ?? '')
  expect(of({})).toBe('as usual')
  expect(of({ 'worksheets.arithmetic': 'true' })).toBe('as usual')
  expect(of({ 'worksheets.level': '3', 'worksheets.arithmetic': 'false', 'worksheets.leave_out': 'tonnes, batter' })).toBe(
    'level 3, no sums, 2 kinds left out',
  )
  expect(of({ 'worksheets.questions': '1', 'worksheets.leave_out': 'tonnes' })).toBe('1 question, 1 kind left out')
})
