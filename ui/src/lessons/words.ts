// Lessons in words: whose each is, where a fault lies, lists as lines and lines as lists.
import type { LessonDraft, LessonFault, ShelfLesson } from '../bindings'

/** Parts that are a list of lines. */
export type ListPart = 'aims' | 'show' | 'kit' | 'mistakes' | 'when' | 'drawings' | 'hazards'
/** Parts that are one word or line. */
export type WordPart = 'title' | 'kind' | 'minutes' | 'before'

export const NAMES: Record<string, string> = {
  title: 'Title', kind: 'What it is about', minutes: 'Minutes', before: 'When it is given', when: 'On which courses',
  drawings: 'Drawings', aims: 'Aims', show: 'What you show', kit: 'Kit', hazards: 'Cautions', mistakes: 'Mistakes',
  questions: 'Questions', body: 'The text', id: 'The name of the file',
}

/** A list as it is typed: a line for each. */
export const asLines = (list: readonly string[]) => list.join('\n')

/** What was typed as a list; empty lines are none of it. */
export const listOf = (typed: string) => typed.split('\n').map((line) => line.trim()).filter(Boolean)

/** Where a fault lies, as a heading of it: `Line 3 of the text`. */
export function placeOf({ part, line }: Pick<LessonFault, 'part' | 'line'>): string {
  if (part === 'body') return `Line ${line} of the text`
  const name = NAMES[part]
  return name ? `${name} (line ${line} of the file)` : `Line ${line} of the file`
}

/** Whose it is, and whether it stands on the shelf as it is written. */
export function standing({ whose, saved }: Pick<LessonDraft, 'whose' | 'saved'>): string {
  if (whose === 'new') return 'A new lesson, not saved yet'
  if (whose === 'built-in') return saved ? 'The built-in lesson' : 'The built-in lesson counts; your words are not saved'
  const yours = whose === 'replaces' ? 'Yours, in place of the built-in one' : 'Your own lesson'
  return saved ? yours : `${yours}; changed, not saved`
}

/** Whose a lesson on the shelf is; nothing for what came with the program. */
export function mark({ whose }: Pick<ShelfLesson, 'whose'>): string {
  return { own: 'your own', replaces: 'yours, in place of the built-in one' }[whose] ?? ''
}

/** The list with a word in it or without, in the order of all there are; words that are none of them stay at its end. */
export function ticked(list: readonly string[], word: string, there: boolean, all: readonly string[]): string[] {
  const now = new Set(there ? [...list, word] : list.filter((it) => it !== word))
  return [...all.filter((it) => now.has(it)), ...[...now].filter((it) => !all.includes(it))]
}

/** On which courses it is taught, as the file says it: on those that ask for it where nothing is ticked. */
export const whenOf = (list: readonly string[]) => (list.length === 0 ? ['asked'] : [...list])

/** In a few words. */
export function whenWords(when: readonly string[], conditions: readonly (readonly [string, string])[]): string {
  if (when.length === 0) return 'only where a course asks for it'
  return when.map((word) => conditions.find(([it]) => it === word)?.[1] ?? word).join(', or ')
}

/** Where a line begins and ends in a text; lines count from 1. */
export function lineIn(text: string, line: number): [from: number, to: number] {
  const lines = text.split('\n')
  const its = lines[line - 1]
  if (its === undefined) return [text.length, text.length]
  const from = lines.slice(0, line - 1).reduce((sum, it) => sum + it.length + 1, 0)
  return [from, from + its.length]
}

/** A page as paper: its SVG, its name, whether it is older than what is written. */
export type Paper = { svg: string; name: string; late: boolean; turn: (by: 1 | -1) => Promise<void> }
