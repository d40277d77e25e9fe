// Six answers while they are typed: checked quietly, told when a line is left, following the country.
import { afterEach, beforeEach, expect, it, vi } from 'vitest'
import type { Reply } from '../backend'
import type { AnswersChecked, BeginChoices, Trouble } from '../bindings'
import { Beginning, CHECK_MS } from './beginning.svelte'

const CHOICES: BeginChoices = {
  usual: {
    'venue.name': '', 'venue.country': 'GB', 'venue.time_zone': 'Europe/London', units: 'metric', day: '2',
    'day.0.start': '09:00', 'day.0.finish': '16:30',
  },
  countries: [
    { code: 'GB', name: 'United Kingdom', units: 'metric', american: false, zones: ['Europe/London'] },
    { code: 'US', name: 'United States', units: 'imperial', american: true, zones: ['America/New_York', 'America/Chicago'] },
  ],
  zones: ['America/Chicago', 'America/New_York', 'Asia/Kathmandu', 'Europe/London'],
  rocks: [['fieldstone', 'Mixed fieldstone']],
}

const trouble = (key: string): Trouble => ({ code: 'bad-answer', key, what: `wrong at ${key}`, cure: '' })

let wrong: string[]
let asked: Record<string, string>[]
let made: Record<string, string> | undefined
let beginning: Beginning

beforeEach(async () => {
  vi.useFakeTimers()
  vi.stubGlobal('document', { getElementById: () => null })
  wrong = ['venue.name']
  asked = []
  made = undefined
  const rust = {
    beginChoices: async (): Promise<Reply<BeginChoices>> => ({ ok: true, value: CHOICES }),
    checkAnswers: async (answers: Record<string, string>): Promise<Reply<AnswersChecked>> => {
      asked.push(answers)
      return { ok: true, value: { troubles: wrong.map(trouble), comes_to: null } }
    },
    beginCourse: async (answers: Record<string, string>): Promise<Reply<null>> => {
      made = answers
      return { ok: true, value: null }
    },
  }
  beginning = new Beginning(rust, async (question) => void (await question()))
  await beginning.look()
})
afterEach(() => {
  vi.useRealTimers()
  vi.unstubAllGlobals()
})

it('tells what is wrong only where a line was left', () => {
  expect(beginning.troubleAt('venue.name')).toBeUndefined()
  beginning.leave('venue.name')
  expect(beginning.troubleAt('venue.name')?.what).toContain('wrong')
})

it('tells a finish before its start whichever of them was left', async () => {
  wrong = ['day.0.finish']
  beginning.type('day.0.start', '18:00')
  await vi.advanceTimersByTimeAsync(CHECK_MS)
  beginning.leave('day.0.start')
  expect(beginning.troubleAt('day.0.finish')).toBeDefined()
})

it('checks keys that come together once', async () => {
  const before = asked.length
  for (const text of ['T', 'Th', 'Thorn']) beginning.type('venue.name', text)
  await vi.advanceTimersByTimeAsync(CHECK_MS)
  expect(asked.length).toBe(before + 1)
  expect(asked.at(-1)?.['venue.name']).toBe('Thorn')
})

it('takes zone and units with the country, until units were chosen', async () => {
  await beginning.choose('venue.country', 'US')
  expect(beginning.text('venue.time_zone')).toBe('America/New_York')
  expect(beginning.text('units')).toBe('imperial')
  expect(beginning.zones).toEqual(['America/New_York', 'America/Chicago'])
  expect(beginning.american).toBe(true)
  await beginning.choose('units', 'imperial')
  await beginning.choose('venue.country', 'GB')
  expect(beginning.text('units')).toBe('imperial')
  await beginning.choose('venue.country', '')
  expect(beginning.zones).toEqual(CHOICES.zones)
  expect(beginning.american).toBe(false)
  expect(beginning.text('venue.time_zone')).toBe('Europe/London')
})

it('makes nothing while something is wrong, and then tells all of it', async () => {
  await beginning.make()
  expect(made).toBeUndefined()
  expect(beginning.troubleAt('venue.name')).toBeDefined()
  wrong = []
  beginning.type('venue.name', 'Thorn Beck')
  await beginning.make()
  expect(made?.['venue.name']).toBe('Thorn Beck')
})

it('begins anew after a course was made', async () => {
  beginning.type('venue.name', 'Thorn Beck')
  await beginning.look()
  expect(beginning.text('venue.name')).toBe('Thorn Beck')
  beginning.forget()
  await beginning.look()
  expect(beginning.text('venue.name')).toBe('')
})
