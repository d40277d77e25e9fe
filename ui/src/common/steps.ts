// The steps of a course, in order, and which of them a key or a thing to do belongs to.
import type { View, WrittenKit, WrittenLoads, WrittenMoney, WrittenToDo, WrittenToday } from '../bindings'

export type StepId =
  | 'ready' | 'venue' | 'group' | 'wall' | 'line' | 'frames' | 'stone' | 'days' | 'lessons' | 'kit' | 'store' | 'load' | 'money'
  | 'pages' | 'today' | 'after'
  /** The words of the trade: no step of the course. */
  | 'words'
export type DrawingName =
  | 'section' | 'elevation' | 'line_plan' | 'setting_out' | 'frame' | 'gauge' | 'heap_plan'
  | 'timetable' | 'chance_curve' | 'progress'

export type Step = {
  id: StepId
  name: string
  /** The drawing that belongs to it. */
  drawing: DrawingName
  /** Where it stands, in a few words. */
  now: (view: View) => string
}

export const STEPS: readonly Step[] = [
  { id: 'ready', name: 'Ready?', drawing: 'elevation', now: ({ written }) => left(written.to_do) },
  { id: 'venue', name: 'Course', drawing: 'elevation', now: ({ written }) => written.venue },
  { id: 'group', name: 'Group', drawing: 'elevation', now: ({ plan }) => people(plan.students) },
  { id: 'wall', name: 'Wall', drawing: 'section', now: ({ written }) => written.wall.length },
  { id: 'line', name: 'Line and ground', drawing: 'line_plan', now: ({ written }) => written.wall.lie },
  { id: 'frames', name: 'Frames', drawing: 'frame', now: ({ written }) => frames(written.frames.count) },
  { id: 'stone', name: 'Stone', drawing: 'heap_plan', now: ({ written }) => `${written.stone.high} to order` },
  { id: 'days', name: 'Days', drawing: 'timetable', now: ({ written }) => days(written.days.length) },
  { id: 'lessons', name: 'Lessons', drawing: 'timetable', now: ({ choices }) => `${choices.lessons.filter((it) => it.taught).length} taught` },
  { id: 'kit', name: 'Kit', drawing: 'gauge', now: ({ written }) => tools(written.kit) },
  { id: 'store', name: 'Kit store', drawing: 'gauge', now: () => 'for all your courses' },
  { id: 'load', name: 'Load and home', drawing: 'line_plan', now: ({ written }) => runs(written.loads) },
  { id: 'money', name: 'Money', drawing: 'elevation', now: ({ written }) => perHead(written.money) },
  { id: 'pages', name: 'Pages', drawing: 'setting_out', now: () => 'to print' },
  { id: 'today', name: 'On the day', drawing: 'progress', now: ({ written }) => standing(written.running) },
  { id: 'after', name: 'Afterwards', drawing: 'progress', now: () => 'your pace book' },
]

function left(toDo: readonly Pick<WrittenToDo, 'counts'>[]): string {
  const count = toDo.filter((it) => it.counts).length
  return count === 0 ? 'nothing left to do' : `${count} to do`
}

const people = (count: number) => (count === 1 ? '1 student' : `${count} students`)
const frames = (count: number) => (count === 1 ? '1 frame' : `${count} frames`)
const days = (count: number) => (count === 1 ? '1 day' : `${count} days`)

function tools({ short, lines }: Pick<WrittenKit, 'short' | 'lines'>): string {
  if (short !== 0) return `${short} short`
  const uncounted = lines.filter((line) => line.have === '').length
  return uncounted === 0 ? 'nothing short' : `${uncounted} not counted`
}

function runs(loads: Pick<WrittenLoads, 'runs' | 'fits_nowhere'> | null): string {
  if (!loads) return 'no vehicle yet'
  if (loads.fits_nowhere) return 'something is too heavy'
  return loads.runs.length === 1 ? '1 run' : `${loads.runs.length} runs`
}

function perHead(money: Pick<WrittenMoney, 'lines' | 'per_head'> | null): string {
  return money && money.lines.length !== 0 ? `${money.per_head} a head` : 'no prices yet'
}

function standing({ today }: { today: Pick<WrittenToday, 'done'> | null }): string {
  return today ? `${today.done} built` : 'nothing told yet'
}

const OF_KEY: readonly (readonly [start: string, step: StepId])[] = [
  ['venue.longest_wall', 'wall'],
  ['pace.seed', 'pages'],
  ['worksheets', 'pages'],
  ['pace.chance', 'wall'],
  ['pace.beforehand', 'days'],
  ['pace.without', 'days'],
  ['timetable', 'days'],
  ['wish', 'days'],
  ['absence', 'group'],
  ['progress', 'today'],
  ['wall.line', 'line'],
  ['wall.ground', 'line'],
  ['wall.top', 'line'],
  ['wall.steps', 'line'],
  ['wall', 'wall'],
  ['group', 'group'],
  ['student', 'group'],
  ['frames', 'frames'],
  ['stone', 'stone'],
  ['day', 'days'],
  ['kit', 'kit'],
  ['vehicle', 'load'],
  ['money', 'money'],
]

/** The step at which a key is asked for. */
export function stepOfKey(key: string): StepId {
  const found = OF_KEY.find(([start]) => key === start || key.startsWith(`${start}.`))
  return found?.[1] ?? 'venue'
}

const OF_PART: Record<string, StepId> = {
  venue: 'venue', people: 'group', wall: 'wall', frames: 'frames', stone: 'stone', kit: 'kit', days: 'days',
  papers: 'pages', money: 'money',
}
/** Tasks of the kit that are done at the vehicle. */
const AT_THE_VEHICLE: readonly string[] = ['load', 'count-home', 'too-heavy']

/** The step at which a thing to do can be done; none for a part not known here. */
export function stepOfToDo({ id, part }: Pick<WrittenToDo, 'id' | 'part'>): StepId | undefined {
  return AT_THE_VEHICLE.includes(id) ? 'load' : OF_PART[part]
}

export const stepNamed = (id: StepId): Step => STEPS.find((step) => step.id === id) ?? STEPS[0]!
