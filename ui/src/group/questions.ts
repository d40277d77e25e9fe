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

export const STUDENTS: readonly Question[] = [
  { key: 'group.novices', label: 'Novices', kind: 'number', help: 'Never built before.' },
  { key: 'group.improvers', label: 'Improvers', kind: 'number', help: 'A course or two behind them.' },
  { key: 'group.experienced', label: 'Experienced', kind: 'number', help: 'Experienced amateurs.' },
]
