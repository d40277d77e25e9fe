// What is asked about frames and bars.
import { COMMON, type Choice, type Question } from '../common/field'

export const KIND: readonly Question[] = [
  {
    key: 'frames.kind', label: 'Frames', kind: 'choice', wide: true, unset: 'bars and boards',
    choices: [['bar', 'bars and boards'], ['timber', 'timber, nailed']],
  },
]

export const STOCK: readonly Question[] = [
  { key: 'frames.in_stock', label: 'Frames in stock', kind: 'number', unset: 'not counted' },
  { key: 'frames.set_size', label: 'Frames to a set', kind: 'number', unset: '1' },
  {
    key: 'frames.leapfrog', label: 'Move frames along (leapfrog)', kind: 'switch', wide: true,
    help: 'Build in bays, so that the stock does not limit the length. At least 3 stay in use.',
  },
]

export const PLACING: readonly Question[] = [
  {
    key: 'frames.spacing_straight', label: 'No further apart than', unset: '3 m', from: COMMON,
    help: 'On a straight line, at equal distances.',
  },
  { key: 'frames.spacing_curve', label: 'On an arc', unset: '1.5 m', from: COMMON, help: 'Left empty with a tolerance given: as the tolerance asks.' },
  {
    key: 'frames.curve_tolerance', label: 'String off the curve', unset: '0.025 m', from: COMMON,
    help: 'How far, at the middle of a bay, on the outer face.',
  },
]

export const LUMBER: readonly Question[] = [
  {
    key: 'frames.lumber_lengths', label: 'Battens are sold in', unset: '1.8 m to 4.8 m by the 0.6 m', from: COMMON,
    help: 'Commas between them.', wide: true,
  },
]

/** The bar, of those the table holds, and how it is set. */
export const barsAndBoards = (choices: readonly Choice[]): readonly Question[] => [
  { key: 'frames.bar', label: 'Bar', kind: 'choice', wide: true, choices, unset: 'No. 5' },
  {
    key: 'frames.stock_lengths', label: 'Lengths it is bought in', unset: '5 ft, 6 ft, 8 ft', from: COMMON,
    help: 'Commas between them.',
  },
  {
    key: 'frames.embedment', label: 'In the ground', unset: '0.45 m and the depth of the footing', from: COMMON,
    help: 'Along the bar.',
  },
  { key: 'frames.projection', label: 'Above the board', unset: '0.14 m', from: COMMON, help: 'Along the bar.' },
]
