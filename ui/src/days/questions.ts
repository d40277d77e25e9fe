// What is asked about the days, and which days and breaks the file has.
import type { Question } from '../common/field'

export const day = (at: number): readonly Question[] => [
  { key: `day.${at}.date`, label: 'Date', kind: 'date' },
  { key: `day.${at}.start`, label: 'Students arrive', kind: 'time' },
  { key: `day.${at}.finish`, label: 'They leave', kind: 'time' },
]

/** Heads of the rows of breaks; each field says them again for those who only hear it. */
export const PAUSE = ['Break', 'Begins', 'Minutes'] as const

export function pause(day: number, at: number): readonly Question[] {
  const key = `day.${day}.breaks.${at}`
  const [name, start, minutes] = PAUSE
  return [
    { key: `${key}.name`, label: `Break ${at + 1}, ${name}` },
    { key: `${key}.start`, label: `Break ${at + 1}, ${start}`, kind: 'time' },
    { key: `${key}.minutes`, label: `Break ${at + 1}, ${minutes}`, kind: 'number' },
  ]
}

/** The places of a day's breaks in the file, in order. */
export function breaksOf(values: Record<string, string>, day: number): number[] {
  const found = new Set<number>()
  for (const key of Object.keys(values)) {
    const [, at, , place] = /^day\.(\d+)\.(breaks)\.(\d+)\./.exec(key) ?? []
    if (Number(at) === day && place !== undefined) found.add(Number(place))
  }
  return [...found].sort((one, other) => (one < other ? -1 : 1))
}

const KINDS: Record<string, string> = {
  lesson: 'lesson', build: 'building', break: 'break', safety: 'safety', tidy: 'tidying',
}

/** What an entry is, in a word. */
export const kindWord = (kind: string) => KINDS[kind] ?? kind
