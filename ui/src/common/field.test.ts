// What a field says of itself, as text and as markup.
import { render } from 'svelte/server'
import { describe, expect, it } from 'vitest'
import type { View } from '../bindings'
import { Course } from './course.svelte'
import { byClock, choicesWith, COMMON, faults, idOf, note, sentence, type Question, wrong } from './field'
import Field from './Field.svelte'

const SPACING: Question = { key: 'wall.through_spacing', label: 'Spacing', unset: '0.9 m', from: COMMON, help: 'Along a row.' }

describe('a note', () => {
  it('says what it means, what holds while it is empty, and who says so', () => {
    expect(note(SPACING)).toBe('Along a row. Left empty: 0.9 m (common practice, no source).')
    expect(note({ key: 'group.pairs', label: 'Pairs', kind: 'choice', unset: 'mixed' })).toBe('')
    expect(note({ key: 'a', label: 'A' })).toBe('')
  })
})

describe('a time', () => {
  it('is written by the clock of the course, and words that are none stay', () => {
    const table = [
      ['00:15', '12:15 am'], ['09:05', '9:05 am'], ['11:59', '11:59 am'], ['12:00', '12:00 pm'], ['16:45', '4:45 pm'],
      ['4:45 pm', '4:45 pm'], ['half past', 'half past'], ['', ''],
    ] as const
    for (const [time, american] of table) {
      expect(byClock(time, true)).toBe(american)
      expect(byClock(time, false)).toBe(time)
    }
  })
})

describe('an id', () => {
  it('is the key without what an id must not hold', () => {
    expect(idOf('wall.footing.depth')).toBe('wall-footing-depth')
    expect(idOf('kit.on_hand.Walling hammer')).toBe('kit-on_hand-Walling-hammer')
  })
})

describe('choices', () => {
  const bar: Question = { key: 'frames.bar', label: 'Bar', choices: [['No. 5', 'five']], unset: 'No. 5' }
  it('hold a word of the file that is none of ours', () => {
    expect(choicesWith(bar, '25 mm').map(([word]) => word)).toEqual(['', 'No. 5', '25 mm'])
    expect(choicesWith(bar, 'No. 5').map(([word]) => word)).toEqual(['', 'No. 5'])
  })
})

describe('a sentence', () => {
  it('begins large, ends with a stop and leaves the key out', () => {
    expect(sentence('wall.height: "2" has no unit', 'wall.height')).toBe('"2" has no unit.')
    expect(sentence('vehicle 1.payload: "7" has no unit', 'vehicle.0.payload')).toBe('"7" has no unit.')
    expect(sentence('did you mean "limestone"?')).toBe('Did you mean "limestone"?')
  })
})

describe('what is wrong', () => {
  it('leaves the name of a file as it is written', () => {
    expect(wrong({ key: '', what: 'course.walling, line 3: there is no format 9' })).toMatch(/^course/)
    expect(wrong({ key: 'venue.time_zone', what: 'there is no time zone "X"' })).toBe('There is no time zone "X".')
  })
})

describe('a field on the page', () => {
  const course = new Course({ edit: async (key) => ({
    ok: false, trouble: { code: 'no', key, what: `${key}: too high`, cure: 'write 1 m' },
  }) })
  course.view = { values: { 'wall.height': '1 m' } } as unknown as View
  const html = (question: Question) => render(Field, { props: { course, question } }).body

  it('has its label, its value and its note', () => {
    const spacing = html(SPACING)
    expect(spacing).toContain('<label for="field-wall-through_spacing"')
    expect(spacing).toContain('placeholder="0.9 m"')
    expect(spacing).toContain('aria-describedby="help-wall-through_spacing"')
    expect(spacing).not.toContain('aria-invalid')
  })

  it('in trouble says so to everyone', async () => {
    course.type('wall.height', '99 m')
    await course.send()
    const height = html({ key: 'wall.height', label: 'Height' })
    expect(height).toContain('value="99 m"')
    expect(height).toContain('aria-invalid="true"')
    expect(height).toContain('aria-describedby="trouble-wall-height"')
    expect(height).toMatch(/id="trouble-wall-height"[\s\S]*Height:[\s\S]*Too high\.[\s\S]*Write 1 m\./)
  })
})

it('tells each fault of a list on its own line', () => {
  expect(faults({ cure: 'kit.csv, row 3: one\n\nkit.csv, row 9: two' })).toEqual(['kit.csv, row 3: one', 'kit.csv, row 9: two'])
  expect(faults({ cure: '' })).toEqual([])
})
