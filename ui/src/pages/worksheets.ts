// What the course file says of the worksheets, and the same in a few words.
import type { Question } from '../common/field'
import { namesIn } from '../common/lists'

export const LEVEL = 'worksheets.level'
export const QUESTIONS = 'worksheets.questions'
export const ARITHMETIC = 'worksheets.arithmetic'
export const LEAVE_OUT = 'worksheets.leave_out'

const LEVELS: readonly (readonly [number: string, words: string])[] = [
  ['1', '1: whole numbers, one step'], ['2', '2: as on a usual course'], ['3', '3: odd numbers, more steps'],
]

export const WORKSHEETS: readonly Question[] = [
  { key: LEVEL, label: 'How hard', kind: 'choice', wide: true, choices: LEVELS, unset: 'as on a usual course' },
  { key: QUESTIONS, label: 'Questions to a sheet', kind: 'number', unset: 'four pages full' },
]

/** How the worksheets differ from the usual ones: `level 3, no sums, 2 kinds left out`. */
export function worksheetWords(text: (key: string) => string): string {
  const out = namesIn(text(LEAVE_OUT)).length
  const words = [
    text(LEVEL) && `level ${text(LEVEL)}`,
    text(QUESTIONS) && (text(QUESTIONS) === '1' ? '1 question' : `${text(QUESTIONS)} questions`),
    text(ARITHMETIC) === 'false' && 'no sums',
    out !== 0 && `${out} ${out === 1 ? 'kind' : 'kinds'} left out`,
  ].filter(Boolean)
  return words.length === 0 ? 'as usual' : words.join(', ')
}
