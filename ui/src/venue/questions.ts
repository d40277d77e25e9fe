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

/** What those who help have to know; words of any length. */
const words = (key: string, label: string, help?: string): Question => ({
  key: `emergency.${key}`, label, help, wide: true, unset: 'a blank to fill in',
})

export const EMERGENCY: readonly Question[] = [
  words('first_aider', 'First aider'),
  words('first_aid_kit', 'First aid kit', 'Where it lies.'),
  words('hospital', 'Nearest hospital', 'One that takes people in: name, road, how far.'),
  words('access', 'Way in', 'For an ambulance, and for students: turn, gate, track.'),
  words('meeting_point', 'Meeting point', 'Where heads are counted and the ambulance is met.'),
  words('signal', 'Telephone signal', 'Where there is one.'),
]
