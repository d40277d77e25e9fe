// What is asked about money.
import type { Question } from '../common/field'

const price = (key: string, label: string, help?: string): Question => ({ key: `money.${key}`, label, kind: 'number', help })

export const FEE: readonly Question[] = [
  price('fee', 'Fee', 'What one student pays.'),
  { key: 'money.currency', label: 'Currency', help: 'Three capitals, such as GBP, EUR or USD.' },
]

export const STONE: readonly Question[] = [
  { key: 'money.stone', label: 'Stone', help: 'By mass, such as 42 / t or 38 / short ton.' },
  price('delivery', 'One delivery', 'Besides the stone on it.'),
]

export const PEOPLE: readonly Question[] = [
  price('instructor', 'An instructor', 'One, for a day.'),
  price('assistant', 'An assistant', 'One, for a day.'),
  price('travel', 'Travel', 'All of it.'),
]

export const REST: readonly Question[] = [
  price('venue', 'The venue', 'For the course.'),
  price('hire', 'Hire', 'Tools and machines, all of it.'),
  price('consumables', 'Used up', 'By one student.'),
  price('other', 'Anything else', 'For the course.'),
]
