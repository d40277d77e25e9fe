// The six questions of a new course.
import type { BeginChoices } from '../bindings'
import type { Question } from '../common/field'

export function where(choices: BeginChoices, zones: readonly string[]): readonly Question[] {
  return [
    { key: 'venue.name', label: 'Name of the place', help: 'As it stands on the pages, such as Hollin Bank Farm.', wide: true },
    {
      key: 'venue.country', label: 'Country', kind: 'choice', unset: 'the number to ring stays a blank',
      choices: choices.countries.map(({ code, name }) => [code, name]), help: 'For the emergency number.',
    },
    {
      key: 'venue.time_zone', label: 'Time zone', kind: 'choice',
      choices: zones.map((zone) => [zone, zone.replaceAll('_', ' ')]),
    },
    { key: 'venue.latitude', label: 'Latitude', kind: 'number', unset: "the zone's own town", help: 'Degrees, such as 54.2.' },
    { key: 'venue.longitude', label: 'Longitude', kind: 'number', unset: "the zone's own town", help: 'West is minus, such as -2.4.' },
  ]
}

export const WHEN: readonly Question[] = [
  { key: 'day.0.date', label: 'First day', kind: 'date', help: 'A Friday some weeks on, to begin with.' },
  { key: 'day', label: 'Days', kind: 'number', help: 'In a row.' },
  { key: 'day.0.start', label: 'From', kind: 'time' },
  { key: 'day.0.finish', label: 'To', kind: 'time', help: 'Lunch and tea are put in.' },
]

export const WHO: readonly Question[] = [
  { key: 'group.novices', label: 'Novices', kind: 'number', help: 'Never built before.' },
  { key: 'group.improvers', label: 'Improvers', kind: 'number', help: 'A course or two behind them.' },
  { key: 'group.experienced', label: 'Experienced', kind: 'number', help: 'Experienced amateurs.' },
  { key: 'group.instructors', label: 'Instructors', kind: 'number', help: 'You among them.' },
]

export const UNITS: readonly Question[] = [
  {
    key: 'units', label: 'Lengths and weights', kind: 'choice', wide: true,
    choices: [['metric', 'metres and tonnes'], ['imperial', 'feet, inches and short tons']],
  },
]

export const stone = (choices: BeginChoices): readonly Question[] => [
  {
    key: 'stone.kind', label: 'Kind of stone', kind: 'choice', choices: choices.rocks, wide: true,
    help: 'Mixed fieldstone is right for a heap nobody can name.',
  },
]

export const FRAMES: readonly Question[] = [
  {
    key: 'frames.kind', label: 'Kind of frame', kind: 'choice', wide: true,
    choices: [['bar', 'two bars and a board'], ['timber', 'nailed of timber']],
  },
  { key: 'frames.in_stock', label: 'How many you have', kind: 'number', unset: 'not counted yet' },
]
