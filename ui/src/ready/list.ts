// The list of what is not ready: under its dates, with what is late.
import type { WrittenToDo } from '../bindings'
import { grouped } from '../common/record'

export type Due = {
  date: string
  heading: string
  /** `late`, `passed` or nothing. */
  passed: string
  /** What is left of it, in words. */
  left: string
  /** It cannot wait, or it is the next one: seen without asking for it. */
  pressing: boolean
  items: WrittenToDo[]
}

/** Its date has passed and it is not done. Dates are written so that they sort as text. */
const hasPassed = ({ date, done }: Pick<WrittenToDo, 'date' | 'done'>, today: string) =>
  !done && date !== '' && date < today

/** It counts, and its date has passed. */
export const isLate = (it: Pick<WrittenToDo, 'date' | 'done' | 'counts'>, today: string) => it.counts && hasPassed(it, today)

/** Under each date, in the order given. A date is late where something that counts is. */
export function byDate(toDo: readonly WrittenToDo[], today: string): Due[] {
  const amongReminders = toDo.some(isReminder)
  const next = toDo.find((it) => !it.done && today <= it.date)?.date
  return grouped(toDo, (it) => it.date).map(([date, items]) => {
    const open = items.filter((it) => !it.done)
    const passed = open.some((it) => isLate(it, today)) ? 'late' : open.some((it) => hasPassed(it, today)) ? 'passed' : ''
    return {
      date,
      heading: items[0]?.by ? `By ${items[0].by}` : 'Without a date',
      passed,
      left: open.length === 0 ? 'all done' : `${open.length} to see to`,
      pressing: passed !== '' || date === next || date === '' || (amongReminders && items.some((it) => it.counts)),
      items,
    }
  })
}

/** Neither done nor counting: nobody keeps the list yet, so nobody knows. */
export const isReminder = ({ counts, done }: Pick<WrittenToDo, 'counts' | 'done'>) => !counts && !done

/** What is said beside it; that it counts only where others do not. */
export function words(it: WrittenToDo, today: string, amongReminders: boolean): string {
  if (it.done) return 'done'
  if (isLate(it, today)) return 'late'
  return it.counts && amongReminders ? 'counts already' : ''
}

/** Where the keyboard goes when this one leaves the list: to the next, or the one before. */
export function neighbour(shown: readonly Pick<WrittenToDo, 'id'>[], id: string): string | undefined {
  const at = shown.findIndex((it) => it.id === id)
  return (shown[at + 1] ?? shown[at - 1])?.id
}
