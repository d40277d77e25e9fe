// What the place of the store says, in words.
import type { BookedCourse, KitStore, Lot } from '../bindings'

/** What a lot is beside its counts. */
export function about({ owner, mass, note, unit }: Lot): string {
  const parts = [owner && `of ${owner}`, unit && `counted in ${unit}s`, mass && `${mass} each`, note]
  return parts.filter(Boolean).join('; ')
}

/** Whether a rule of the tool list has this name, in a size or none; else its count serves no course. */
export function isAsked(item: string, names: readonly string[]): boolean {
  const name = item.trim().toLowerCase()
  return names.some((it) => name === it.toLowerCase() || name.startsWith(`${it.toLowerCase()}, `))
}

/** How this course stands with the store. */
export function standing({ stands, booked, courses }: KitStore): string {
  const mine = courses.find((it) => it.this)
  if (stands === 'home') return `Its kit was counted home on ${mine?.home}.`
  if (stands !== 'booked') return 'Nothing is booked for this course yet, so other courses may count on the same things.'
  const things = booked.length === 1 ? '1 thing is' : `${booked.length} things are`
  return `${things} booked for its days. Saved with other days or needs, it books those.`
}

export const courseState = ({ home }: BookedCourse) => (home === '' ? 'booked' : `home on ${home}`)
