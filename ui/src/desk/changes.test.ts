// What undoing takes back is named as a person would.
import { describe, expect, it } from 'vitest'
import type { Changed } from '../bindings'
import { nameOf } from './changes'

const changed = (key: string, from: string | null, to: string | null): Changed => ({ key, from, to })

describe('the name of a change', () => {
  it.each<[string, Changed[]]>([
    ['height 1.07 m to 1.2 m', [changed('wall.height', '1.07 m', '1.2 m')]],
    ['chance to keep set to 0.9', [changed('pace.chance', null, '0.9')]],
    ['cope height taken out', [changed('wall.cope_height', '0.3 m', null)]],
    ['day 1, start 09:00 to 08:30', [changed('day.0.start', '09:00', '08:30')]],
    ['day 3 added', [changed('day.2.date', null, '2027-04-25'), changed('day.2.start', null, '09:00')]],
    ['day 1, breaks 2 taken out', [changed('day.0.breaks.1.at', '15:00', null), changed('day.0.breaks.1.minutes', '15', null)]],
    ['novices 6 to 4 and 1 more', [changed('group.novices', '6', '4'), changed('group.improvers', '2', '4')]],
    ['what was told of the day', [changed('wall.length', 'auto', '6.75 m'), changed('progress.0.day', null, '1'), changed('progress.0.at', null, '11:00')]],
    ['a remark in the file', []],
  ])('is %s', (name, changes) => expect(nameOf(changes)).toBe(name))

  it('is short whatever was typed', () => {
    expect(nameOf([changed('venue.name', 'Home', 'x'.repeat(10_000))]).length).toBeLessThan(60)
  })
})
