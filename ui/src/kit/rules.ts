// A kit rule as it is typed over, and what of it goes to Rust.
import type { Rule, RuleKey, Trouble, WrittenKitLine } from '../bindings'

export type TypedRule = Record<'per' | 'every' | 'each' | 'spare' | 'least' | 'off', string>

const NEW: TypedRule = { per: 'group', every: '', each: '1', spare: '', least: '', off: 'false' }

/** The rule as it stands; for a tool without one, once for the whole course. */
export function typedOf(rule?: Rule): TypedRule {
  if (!rule) return NEW
  const { per, every, each, spare, least } = rule
  return { per, every, each, spare, least, off: String(rule.off) }
}

const NAMES = ['per', 'every', 'each', 'spare', 'least', 'off'] as const

/** Only what is counted by people sharing has so many people to one. */
export const isShared = ({ per }: Pick<TypedRule, 'per'>) => per === 'people'

/**
 * The keys that differ from the rule as it stands. All of them where another standing is meant: what
 * is shown may come from this course alone, and shall hold for good.
 */
export function keysOf(typed: TypedRule, rule: Rule | undefined, all: boolean): RuleKey[] {
  const meant = { ...typed, every: isShared(typed) ? typed.every : '' }
  const before = typedOf(rule)
  const wanted = NAMES.filter((key) => all || !rule || meant[key].trim() !== before[key])
  return wanted
    .filter((key) => (rule && !all) || meant[key].trim() !== '')
    .filter((key) => rule || key !== 'off')
    .map((key) => ({ key, typed: meant[key].trim() }))
}

/** The field a refusal is about; none for what is no field of a rule. */
export function fieldOf(trouble: Trouble | undefined): string | undefined {
  const last = trouble?.key.split('.').at(-1)
  return [...NAMES, 'item'].find((name) => name === last)
}

/** The rules that put nothing on the list, with why. */
export function idle(rules: readonly Rule[], lines: readonly Pick<WrittenKitLine, 'rule'>[]) {
  const busy = new Set(lines.map((line) => line.rule))
  return rules
    .filter((rule) => !busy.has(rule.item))
    .map((rule) => ({ rule, why: rule.off ? 'switched off' : 'not wanted on this course' }))
}

const WORDS: Record<string, string> = {
  student: 'student', pair: 'pair', stint: 'stint', frame: 'frame', metre: 'metre of wall', day: 'day',
  instructor: 'instructor or assistant', person: 'person', people: 'so many people together', group: 'course, once',
  'person hour': 'person and hour',
}

/** What a rule counts by, as a person reads it. */
export const perWords = (per: string) => WORDS[per] ?? per
