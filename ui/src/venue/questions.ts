// What is asked about the course itself and its place.
import type { Question } from '../common/field'

export const COURSE: readonly Question[] = [
  { key: 'title', label: 'Title', wide: true, help: 'Printed at the head of every page.' },
  {
    key: 'units', label: 'Units', kind: 'choice', choices: [['metric', 'metric'], ['imperial', 'imperial']],
    help: 'How figures are shown and printed. You may type either, anywhere.',
  },
  {
    key: 'paper', label: 'Paper', kind: 'choice', choices: [['a4', 'A4'], ['letter', 'Letter']], unset: 'A4',
  },
  {
    key: 'language', label: 'Language', kind: 'choice',
    choices: [['en-GB', 'English, British'], ['en-US', 'English, American']], unset: 'British',
    help: 'Spelling and dates on the pages.',
  },
]

export const VENUE: readonly Question[] = [
  { key: 'venue.name', label: 'Name of the place', wide: true },
  {
    key: 'venue.country', label: 'Country', unset: 'a blank to fill in',
    help: 'Two capitals, such as GB or US: for the emergency number on the safety pages.',
  },
  { key: 'venue.time_zone', label: 'Time zone', help: 'Such as Europe/London.' },
  { key: 'venue.latitude', label: 'Latitude', kind: 'number', help: 'Degrees; north is positive. For daylight.' },
  { key: 'venue.longitude', label: 'Longitude', kind: 'number', help: 'Degrees; east is positive.' },
]
