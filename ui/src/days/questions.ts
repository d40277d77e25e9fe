// What is asked about the days, and which days and breaks the file has.
import { byClock, type Question } from '../common/field'

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

/** Breaks in a few words: `Tea 11:00, Lunch 12:45`. */
export function breakWords(values: Record<string, string>, day: number, breaks: readonly number[], american: boolean): string {
  const words = breaks.map((at) => {
    const of = (what: string) => values[`day.${day}.breaks.${at}.${what}`] ?? ''
    return [of('name') || 'Break', byClock(of('start'), american)].filter(Boolean).join(' ')
  })
  return words.length === 0 ? 'none' : words.join(', ')
}

export const weather = (at: number): readonly Question[] => [
  { key: `day.${at}.weather.high`, label: 'Warmest', help: 'In the shade: 24 C or 75 F.' },
  { key: `day.${at}.weather.low`, label: 'Coldest', help: 'As 8 C or 46 F.' },
  { key: `day.${at}.weather.humidity`, label: 'Humidity', help: 'A share: 0.6 for 60 %.' },
  { key: `day.${at}.weather.wind`, label: 'Wind', help: 'Without gusts: 20 km/h or 12 mph.' },
  { key: `day.${at}.weather.full_sun`, label: 'In full sun, under a clear sky', kind: 'switch', wide: true },
]

/** Heads of the rows of rain. */
export const RAIN = ['Rain from', 'Minutes'] as const

export function spell(day: number, at: number): readonly Question[] {
  const key = `day.${day}.rain.${at}`
  return [
    { key: `${key}.start`, label: `Rain ${at + 1}, from`, kind: 'time' },
    { key: `${key}.minutes`, label: `Rain ${at + 1}, minutes`, kind: 'number' },
  ]
}

/** What makes the days go slower or faster, by the words of the course file. */
export const EFFECTS: readonly (readonly [word: string, label: string, help: string])[] = [
  ['teaching', 'Waiting for help', 'Few instructors for many students: who waits does not build.'],
  ['learning', 'Learning', 'Novices lay slower in their first hours.'],
  ['fatigue', 'Tiredness', 'People slow down as a day goes on.'],
  ['heat', 'Heat', 'Rest in the hot hours of a day whose weather is given.'],
  ['rain', 'Rain', 'Slower work while it rains, where rain is given.'],
]

const KINDS: Record<string, string> = {
  lesson: 'lesson', build: 'building', break: 'break', safety: 'safety', tidy: 'tidying',
}

/** What an entry is, in a word. */
export const kindWord = (kind: string) => KINDS[kind] ?? kind
