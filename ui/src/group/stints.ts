// One student to build with another: what keys lead to, and what came of it.
import type { View } from '../bindings'
import { unmetOf } from '../common/unmet'

/** A stint with who builds it. */
export type Pair = {
  number: number
  from: string
  to: string
  length: string
  who: { name: string; words: string }[]
}

/** The key that says whom a student would like to build with. */
export const wishKey = (students: readonly string[], name: string) => `student.${students.indexOf(name)}.with`

const STEPS: Record<string, number> = { ArrowDown: 1, ArrowRight: 1, ArrowUp: -1, ArrowLeft: -1 }

/** Whom a key leads to from another; nothing for a key that leads to nobody. */
export function others(pairs: readonly Pair[], name: string, from: string | undefined, key: string): string | undefined {
  const all = pairs.flatMap((pair) => pair.who.map((it) => it.name))
  const by = STEPS[key]
  if (by === undefined) return undefined
  const to = all[all.indexOf(from ?? name) + by]
  // Nobody builds with themselves: their own place is stepped over, and the ends hold.
  return (to === name ? all[all.indexOf(name) + by] : to) ?? from
}

type Seen = Pick<View['plan'], 'unmet'> & { stints: readonly (readonly { name: string }[])[] }

/** What came of a wish, in a sentence; or the plan's own reason why it can't be had. */
export function outcomeOf(
  { plan, written }: { plan: Seen; written: { running: { unmet: readonly string[] } } }, name: string, other: string,
): string {
  const own = plan.stints.findIndex((who) => who.some((it) => it.name === name))
  const together = plan.stints[own]?.some((it) => it.name === other)
  if (together) return `${name} builds with ${other} now, in stint ${own + 1}.`
  const why = unmetOf({ plan, written }, 'pairs').filter((it) => it.includes(name))
  return why.join(' ') || `${name} would like to build with ${other}; the others' wishes and experience come first.`
}
