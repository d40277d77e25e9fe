// What is asked about the people.
import type { Question } from '../common/field'

export const STAFF: readonly Question[] = [
  {
    key: 'group.instructors', label: 'Instructors', kind: 'number', unset: '1',
    help: 'One to 6 students is good, 8 the limit for beginners.',
  },
  {
    key: 'group.assistants', label: 'Assistants', kind: 'number', unset: '0',
    help: 'Each counts as half an instructor.',
  },
]

export const PAIRS: readonly Question[] = [
  {
    key: 'group.pairs', label: 'How they pair up', kind: 'choice', unset: 'mixed', wide: true,
    choices: [
      ['mixed', 'mixed: each novice with someone who has built before'],
      ['friends', 'friends: who would like to build together, then mixed'],
      ['alike', 'alike: like with like'],
    ],
  },
]

/** Whom a student would like to build with, and whom not. */
export function wishes(at: number, name: string): readonly Question[] {
  return [
    { key: `student.${at}.with`, label: `${name}, gladly with` },
    { key: `student.${at}.apart`, label: `${name}, apart from` },
  ]
}

/** Heads of the rows of absences; each field says them again for those who only hear it. */
export const ABSENCE = ['Who', 'Day', 'From', 'Until'] as const

export function absence(at: number, names: readonly string[], days: readonly number[]): readonly Question[] {
  const key = `absence.${at}`
  const label = (what: string) => `Absence ${at + 1}, ${what}`
  return [
    { key: `${key}.who`, label: label('who'), kind: 'choice', choices: names.map((name) => [name, name]) },
    { key: `${key}.day`, label: label('day'), kind: 'choice', choices: days.map((day) => [String(day), String(day)]) },
    { key: `${key}.from`, label: label('from'), kind: 'time', unset: 'start' },
    { key: `${key}.until`, label: label('until'), kind: 'time', unset: 'end' },
  ]
}

export const STUDENTS: readonly Question[] = [
  { key: 'group.novices', label: 'Novices', kind: 'number', help: 'Never built before.' },
  { key: 'group.improvers', label: 'Improvers', kind: 'number', help: 'A course or two behind them.' },
  { key: 'group.experienced', label: 'Experienced', kind: 'number', help: 'Experienced amateurs.' },
]
