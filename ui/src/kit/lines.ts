// The tool list: by place, what of it is still open, and what is said beside a tool.
import type { WrittenKitLine } from '../bindings'
import { sentence, type Question } from '../common/field'
import { grouped } from '../common/record'

type Values = Record<string, string>

/** The lines under the places they are used at. */
export const places = (lines: readonly WrittenKitLine[]) => grouped(lines, (line) => line.place)

/** Short, or never counted. */
export const isOpen = ({ have, short }: Pick<WrittenKitLine, 'have' | 'short'>) => short !== '' || have === ''

const keyOf = ({ item }: Pick<WrittenKitLine, 'item'>) => `kit.on_hand.${item}`

/** Where the count of a tool is typed; what the kit store counts holds while nothing is. */
export const countOf = (line: Pick<WrittenKitLine, 'item' | 'have'>, values: Values): Question => ({
  key: keyOf(line),
  label: `${line.item} on hand`,
  kind: 'number',
  unset: keyOf(line) in values ? undefined : line.have || undefined,
})

/** Who counted it, in words. */
export function countedBy(line: Pick<WrittenKitLine, 'item' | 'have'>, values: Values): string {
  if (keyOf(line) in values) return 'typed here'
  return line.have === '' ? '' : 'in the store'
}

/** What there is to say of those held, and what to do before the course. */
export function remarks({ state, owners, prepare }: Pick<WrittenKitLine, 'state' | 'owners' | 'prepare'>): string[] {
  return [
    state && `Of those held: ${state}.`,
    owners && `From ${owners}.`,
    prepare && sentence(`before the course: ${prepare}`),
  ].filter(Boolean)
}
