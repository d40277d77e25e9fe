// The tool list: by place, and what of it is still open.
import type { WrittenKitLine } from '../bindings'
import type { Question } from '../common/field'
import { grouped } from '../common/record'

/** The lines under the places they are used at. */
export const places = (lines: readonly WrittenKitLine[]) => grouped(lines, (line) => line.place)

/** Short, or never counted. */
export const isOpen = ({ have, short }: Pick<WrittenKitLine, 'have' | 'short'>) => short !== '' || have === ''

/** Where the count of a tool is typed. */
export const countOf = ({ item }: Pick<WrittenKitLine, 'item'>): Question => ({
  key: `kit.on_hand.${item}`,
  label: `${item} on hand`,
  kind: 'number',
})
