// For which time something is told, and which stages are asked about.
import type { WrittenStageDone } from '../bindings'
import { rowsOf } from '../common/lists'
import type { WallClock } from '../common/wall-clock'

/** A day, counted from 0, and a time on it. */
export type When = { day: number; time: string }

/** The time of the clock if a course day is on; else of what was told last; else of the first break. */
export function defaultWhen(values: Record<string, string>, clock: WallClock): When {
  const today = courseDay(values, clock.date)
  if (today !== undefined) return { day: today, time: within(values, today, toFive(clock.time)) }
  return lastTold(values) ?? { day: 0, time: values['day.0.breaks.0.start'] ?? values['day.0.finish'] ?? '' }
}

/** A course day is on: the clock has something to say. */
export const isOn = (values: Record<string, string>, { date }: WallClock) => courseDay(values, date) !== undefined

const courseDay = (values: Record<string, string>, date: string) =>
  rowsOf(values, 'day').find((day) => values[`day.${day}.date`] === date)

/** Nobody reads a watch closer than five minutes while they carry stone; and never a time to come. */
export function toFive(time: string): string {
  const [hours = '', minutes = ''] = time.split(':')
  const past = Number(minutes) % 5
  return `${hours}:${String(Number(minutes) - past).padStart(2, '0')}`
}

/** A time within the hours of a day. Times are written so that they sort as text. */
function within(values: Record<string, string>, day: number, time: string): string {
  const start = values[`day.${day}.start`] ?? time
  const finish = values[`day.${day}.finish`] ?? time
  if (time < start) return start
  return finish < time ? finish : time
}

function lastTold(values: Record<string, string>): When | undefined {
  const at = rowsOf(values, 'progress').at(-1)
  if (at === undefined) return undefined
  return { day: Number(values[`progress.${at}.day`]) - 1, time: values[`progress.${at}.time`] ?? '' }
}

export type Stage = { id: string; name: string; bays: readonly { share: string; done: boolean }[]; begun: boolean; done: boolean }

type Known = {
  plan: {
    bays: number
    stages: readonly { stage: string; name: string }[]
    building: readonly string[]
  }
  written: { running: { today: { stages: readonly WrittenStageDone[] } | null } }
}

/** The stages of the course, with how far each bay has come. */
export function stagesOf({ plan, written }: Known): Stage[] {
  const told = written.running.today?.stages
  if (told) {
    return told.map(({ stage, name, bays, shares, done }) => ({
      id: stage, name, done,
      bays: shares.map((share, at) => ({ share, done: bays[at] === 1 })),
      begun: bays.some((share) => share !== 0),
    }))
  }
  const bays = Array.from({ length: plan.bays }, () => ({ share: 'not begun', done: false }))
  return plan.building.map((id) => ({
    id, name: plan.stages.find((it) => it.stage === id)?.name ?? id, bays, begun: false, done: false,
  }))
}

/** How many bays are told one by one at first sight; more of them are folded away. */
const MANY = 4

export const isFolded = ({ bays }: Pick<Stage, 'bays'>) => MANY < bays.length

/** How far the bays have come, in a few words: `each not begun`, `3 of 10 done`. */
export function bayWords(bays: Stage['bays']): string {
  const [first] = bays
  if (first && bays.every((it) => it.share === first.share)) return `each ${first.share}`
  return `${bays.filter((it) => it.done).length || 'none'} of ${bays.length} done`
}

/** More at once is a list to search in, not a thing to tap. */
const MOST = 3

/** The stages that are asked about: those at work, and the next. */
export function asked(stages: readonly Stage[]): Stage[] {
  const open = stages.filter((it) => !it.done)
  const next = open.find((it) => !it.begun)
  return open.filter((it) => it.begun || it === next).slice(0, MOST)
}
