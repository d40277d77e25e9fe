import { expect, it } from 'vitest'
import { absence, wishes } from './questions'

it('asks for an absence with the names and days there are', () => {
  const [who, day] = absence(1, ['Ann', 'Ben'], [1, 2])
  expect(who).toMatchObject({ key: 'absence.1.who', choices: [['Ann', 'Ann'], ['Ben', 'Ben']] })
  expect(day).toMatchObject({ key: 'absence.1.day', choices: [['1', '1'], ['2', '2']] })
})

it('asks each student by name whom they would build with', () => {
  expect(wishes(2, 'Ann').map((it) => it.key)).toEqual(['student.2.with', 'student.2.apart'])
  expect(wishes(2, 'Ann')[0]?.label).toContain('Ann')
})
