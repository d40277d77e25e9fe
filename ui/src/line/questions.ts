// What is asked about the line and the ground, and which rows the file has.
import { type Question } from '../common/field'

export const TOP: readonly Question[] = [
  {
    key: 'wall.top', label: 'Top', kind: 'choice', unset: 'level',
    choices: [['level', 'level'], ['follows ground', 'follows the ground']],
  },
  { key: 'wall.steps.length', label: 'Steps, length', unset: 'no steps', help: 'For a level top in steps.' },
  { key: 'wall.steps.height', label: 'Steps, height', unset: 'no steps' },
]

const TURN = [['left', 'left'], ['right', 'right']] as const

/** Heads of the rows of the line; each field says them again for those who only hear it. */
export const STRETCH = ['Stretch', 'Length', 'Radius', 'Turns'] as const

/** A straight asks for its length, an arc for radius and turn too. */
export function stretch(values: Record<string, string>, at: number): readonly Question[] {
  const key = `wall.line.${at}`
  const label = (what: string) => `Stretch ${at + 1}, ${what}`
  if (!(`${key}.arc` in values)) return [{ key: `${key}.straight`, label: label('length') }]
  return [
    { key: `${key}.arc`, label: label('length along the arc') },
    { key: `${key}.radius`, label: label('radius of the centre line') },
    { key: `${key}.turn`, label: label('turns to the'), kind: 'choice', choices: TURN },
  ]
}

/** Heads of the rows of the survey. */
export const SURVEY = ['Station', 'Centre', 'At the left face', 'At the right face'] as const

export function survey(at: number): readonly Question[] {
  const key = `wall.ground.${at}`
  const label = (what: string) => `Level ${at + 1}, ${what}`
  return [
    { key: `${key}.station`, label: label('station') },
    { key: `${key}.level`, label: label('centre') },
    { key: `${key}.left`, label: label('at the left face'), unset: 'same' },
    { key: `${key}.right`, label: label('at the right face'), unset: 'same' },
  ]
}

/** The places of the rows of a list in the file, in order. */
export function rowsOf(values: Record<string, string>, list: 'line' | 'ground'): number[] {
  const found = new Set<number>()
  for (const key of Object.keys(values)) {
    const [, of, at] = /^wall\.(line|ground)\.(\d+)\./.exec(key) ?? []
    if (of === list && at !== undefined) found.add(Number(at))
  }
  return [...found].sort((one, other) => (one < other ? -1 : 1))
}
