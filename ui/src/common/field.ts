// What a place asks for: one row of its table for each key of the course file.

import type { Trouble } from '../bindings'

export type Choice = readonly [value: string, words: string]

export type Question = {
  key: string
  label: string
  /** Free text if not said. */
  kind?: 'text' | 'number' | 'choice' | 'switch' | 'date' | 'time'
  choices?: readonly Choice[]
  /** What holds while the key is not in the file. */
  unset?: string
  /** Who says so; nothing for what is plain by itself. */
  from?: string
  help?: string
  /** Takes the whole width of the page. */
  wide?: boolean
}

export const COMMON = 'common practice, no source'

/** A key as part of an id: `wall.footing.depth` is `wall-footing-depth`. */
export const idOf = (key: string) => key.replace(/[^\w]+/g, '-')

/** How times may be typed. */
export const AS_TIMES = 'As 13:30 or 1:30 pm.'

/** Whether a course with these values shows times by the clock of twice twelve hours. */
export const isAmerican = (values: Record<string, string>) => values['language'] === 'en-US'

/** A time of the file, `13:30`, by the clock of the course; anything else as it is. */
export const byClock = (time: string, american: boolean) => (american ? twelveHours(time) : time)

/** As the days and the pages have it: `1:30 pm`. */
function twelveHours(time: string): string {
  const [, hours, minutes] = /^(\d\d):(\d\d)$/.exec(time) ?? []
  if (hours === undefined) return time
  const hour = Number(hours)
  return `${hour % 12 || 12}:${minutes} ${hour < 12 ? 'am' : 'pm'}`
}

/** What stands under a field: what it means, what holds while it is empty, and why. */
export function note({ help, unset, from, kind }: Question): string {
  const whose = from ? ` (${from})` : ''
  // A list says itself what holds while nothing is chosen in it, but not who says so.
  const empty = unset && (kind !== 'choice' || from) ? `Left empty: ${unset}${whose}.` : ''
  return [help, kind === 'time' && AS_TIMES, empty].filter(Boolean).join(' ')
}

/** The choices, with the file's own word among them even if it is none of ours. */
export function choicesWith(question: Question, value: string): readonly Choice[] {
  const { choices = [], unset } = question
  const known = choices.some(([word]) => word === value)
  const own: Choice[] = known || value === '' ? [] : [[value, value]]
  const none: Choice[] = unset ? [['', `not said: ${unset}`]] : []
  return [...none, ...choices, ...own]
}

/** What is wrong; without a key it may begin with the name of a file, which stays as it is. */
export const wrong = ({ what, key }: Pick<Trouble, 'what' | 'key'>) => (key ? sentence(what, key) : what)

/** A refusal that names its faults one to a line. */
export const faults = ({ cure }: { cure: string }) => cure.split('\n').filter((line) => line.trim() !== '')

/** A key as messages write it, counted from 1: `vehicle.0.name` is `vehicle 1.name`. */
const inWords = (key: string) => key.replace(/\.(\d+)/g, (_, at) => ` ${Number(at) + 1}`)

/** A sentence as it begins a paragraph, without the key a person knows by its label. */
export function sentence(words: string, key = ''): string {
  const bare = [key, inWords(key)].reduce((left, it) => (it && left.startsWith(`${it}: `) ? left.slice(it.length + 2) : left), words)
  const whole = /[.!?]$/.test(bare) ? bare : `${bare}.`
  return capital(whole)
}

/** Words as they begin a line. */
export const capital = (words: string) => words.charAt(0).toUpperCase() + words.slice(1)
