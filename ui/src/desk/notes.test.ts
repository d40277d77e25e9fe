import { describe, expect, it } from 'vitest'
import type { Keeping, Kept } from '../bindings'
import { notes, type Standing } from './notes'

const kept = (more: Partial<Kept> = {}): Kept => ({
  id: 'a', title: 'Hollin Bank', file: 'one.walling', folder: '/courses', when: '14:32', here: true, since: false,
  changes: [{ key: 'wall.height', from: '1.07 m', to: '1.2 m' }], ...more,
})

const standing = (now: Partial<Keeping>, more: Partial<Standing> = {}): Standing => ({
  now: { kept: [], outside: 'same', elsewhere: false, broken: [], ...now },
  file: 'one.walling', unsaved: false, asks: undefined, leaving: undefined, away: [], ...more,
})

const answers = (now: Partial<Keeping>, more: Partial<Standing> = {}) =>
  notes(standing(now, more)).map((note) => [note.id, ...note.answers.map(([answer]) => answer)])

describe('what is told', () => {
  it('is nothing while all is well', () => expect(notes(standing({}))).toEqual([]))

  it.each([
    ['changed', ['readAnew', 'keepMine', 'saveAs']],
    ['mine', ['readAnew', 'saveAs']],
    ['gone', ['save', 'saveAs']],
  ] as const)('offers for a file that is %s', (outside, choices) => {
    expect(answers({ outside })).toEqual([[outside, ...choices]])
  })

  it('asks before it overwrites, in place of the note, and takes the focus', () => {
    const asked = notes(standing({ outside: 'mine' }, { asks: 'overwrite' }))
    expect(asked.map(({ id, pressing }) => [id, pressing])).toEqual([['overwrite', true]])
    expect(asked[0]?.what).toContain('one.walling')
  })

  it('says what was kept, of when, and what it is', () => {
    const [note] = notes(standing({ kept: [kept()] }))
    expect(note?.what).toBe('Your last changes to one.walling of 14:32 were not saved.')
    expect(note?.about).toBe('They are: height 1.07 m to 1.2 m.')
    expect(note?.answers.map(([, words]) => words)).toEqual(['Take them', 'Leave them'])
  })

  it('tells apart what belongs to another course, or to none that was ever saved', () => {
    const [other] = notes(standing({ kept: [kept({ here: false })] }))
    expect(other?.about).toContain('Taking them opens that course, in /courses.')
    const [fresh] = notes(standing({ kept: [kept({ here: false, file: '', folder: '' })] }))
    expect(fresh?.what).toContain('Hollin Bank, which never had a file,')
    expect(fresh?.about).not.toContain('opens that course')
  })

  it('asks for one sitting after another, and once more before anything goes for good', () => {
    const now = { kept: [kept(), kept({ id: 'b' })] }
    expect(answers(now)).toEqual([['kept', 'take', 'leave']])
    expect(notes(standing(now))[0]?.about).toContain('1 more to decide')
    expect(answers(now, { leaving: 'a' })).toEqual([['kept', 'stay', 'leaveForGood']])
  })

  it('says who saves where the file is open twice', () => {
    const both = notes(standing({ elsewhere: true, outside: 'changed' }, { asks: 'elsewhere' }))
    expect(both.map(({ id, pressing = false }) => [id, pressing])).toEqual([['changed', false], ['elsewhere', true]])
  })

  it('tells of what is broken until it is put away', () => {
    const trouble = { code: 'kept-unreadable', key: '', what: 'Something can not be read.', cure: 'It is put aside.' }
    expect(answers({ broken: [trouble] })).toEqual([['kept-unreadable', 'putAway']])
    expect(answers({ broken: [trouble] }, { away: [trouble] })).toEqual([])
  })
})
