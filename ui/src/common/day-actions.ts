// What the places of the days do to the course, beside setting its keys.
import type * as Backend from '../backend'
import type { Told } from '../backend'
import type { Course } from './course.svelte'

type Rust = Pick<typeof Backend, 'addRain' | 'removeRain' | 'wish' | 'addAbsence' | 'removeAbsence' | 'tell' | 'untell'>

/** Rows are counted anew where one comes or goes, so what stands in their fields goes. */
export const dayActions = (rust: Rust, course: Course) => ({
  addRain: (day: number) => course.replace(() => rust.addRain(day)),
  removeRain: (day: number, at: number) => course.replace(() => rust.removeRain(day, at)),
  addAbsence: () => course.ask(rust.addAbsence),
  removeAbsence: (at: number) => course.replace(() => rust.removeAbsence(at)),
  /** A refusal goes to who asked. */
  wish: (lesson: string, day: number | null, time: string) => course.tell(() => rust.wish(lesson, day, time)),
  tell: (told: Told) => course.tell(() => rust.tell(told)),
  untell: (at: number) => course.tell(() => rust.untell(at)),
})

export type DayActions = ReturnType<typeof dayActions>
