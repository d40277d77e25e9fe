// A named group, told by experience.
import type { Member } from '../bindings'
import { grouped } from '../common/record'

const LABELS: readonly (readonly [experience: string, label: string])[] = [
  ['novice', 'Novices'], ['improver', 'Improvers'], ['experienced', 'Experienced'],
]

/** How many of each experience there are, the empty ones too. */
export function counts(members: readonly Pick<Member, 'experience'>[]): [label: string, count: number][] {
  const found = new Map(grouped(members, (it) => it.experience))
  return LABELS.map(([experience, label]) => [label, found.get(experience)?.length ?? 0])
}
