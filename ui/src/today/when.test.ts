// The time something is told for, and the stages that are asked about.
import { describe, expect, it } from 'vitest'
import { asked, bayWords, defaultWhen, isFolded, isOn, stagesOf, toFive, type Stage } from './when'

const DAYS = {
  'day.0.date': '2027-04-23', 'day.0.start': '09:00', 'day.0.finish': '17:00', 'day.0.breaks.0.start': '11:00',
  'day.1.date': '2027-04-24', 'day.1.start': '09:30', 'day.1.finish': '16:00',
}
const TOLD = { 'progress.0.day': '1', 'progress.0.time': '11:40', 'progress.1.day': '2', 'progress.1.time': '10:15' }

describe('the time', () => {
  it.each([
    ['on a course day', '2027-04-24', '11:43', { day: 1, time: '11:40' }],
    ['before the day begins', '2027-04-24', '07:58', { day: 1, time: '09:30' }],
    ['after it has ended', '2027-04-24', '18:20', { day: 1, time: '16:00' }],
  ])('%s is that of the clock, within the hours', (_, date, time, when) => {
    expect(defaultWhen({ ...DAYS, ...TOLD }, { date, time })).toEqual(when)
  })
  it('on another day is that of the last report, or of the first break', () => {
    const clock = { date: '2027-05-01', time: '11:43' }
    expect(defaultWhen({ ...DAYS, ...TOLD }, clock)).toEqual({ day: 1, time: '10:15' })
    expect(defaultWhen(DAYS, clock)).toEqual({ day: 0, time: '11:00' })
  })
  it('follows the clock on a course day alone', () => {
    expect(isOn(DAYS, { date: '2027-04-24', time: '' })).toBe(true)
    expect(isOn(DAYS, { date: '2027-04-26', time: '' })).toBe(false)
  })
  it('is never later than the clock', () => {
    expect(['11:00', '11:04', '11:59', '09:05'].map(toFive)).toEqual(['11:00', '11:00', '11:55', '09:05'])
  })
})

describe('the stages', () => {
  const plan = {
    bays: 2,
    stages: [{ stage: 'line', name: 'Line' }, { stage: 'dig', name: 'Dig' }, { stage: 'tidy', name: 'Tidy' }],
    building: ['line', 'dig'],
  }
  it('before anything was told are those of the forecast, in the bays of the plan', () => {
    const stages = stagesOf({ plan, written: { running: { today: null } } })
    expect(stages.map((it) => [it.name, it.bays.length, it.begun])).toEqual([['Line', 2, false], ['Dig', 2, false]])
  })
  it('then are what was told', () => {
    const told = { stage: 'dig', name: 'Dig', bays: [1, 0.5], shares: ['done', '50 %'], done: false }
    expect(stagesOf({ plan, written: { running: { today: { stages: [told] } } } })).toEqual([{
      id: 'dig', name: 'Dig', begun: true, done: false, bays: [{ share: 'done', done: true }, { share: '50 %', done: false }],
    }])
  })
  it('asked about are those at work and the next', () => {
    const stage = (id: string, begun: boolean, done = false): Stage => ({ id, name: id, bays: [], begun, done })
    const ids = (stages: Stage[]) => asked(stages).map((it) => it.id)
    expect(ids([stage('a', true, true), stage('b', true), stage('c', false), stage('d', false)])).toEqual(['b', 'c'])
    expect(ids([stage('a', false), stage('b', false)])).toEqual(['a'])
    expect(ids([stage('a', true, true)])).toEqual([])
  })
})

describe('bays', () => {
  const bays = (...shares: string[]) => shares.map((share) => ({ share, done: share === 'done' }))
  it('are folded away when they are more than a screen of taps', () => {
    expect([3, 4, 5].map((count) => isFolded({ bays: bays(...Array<string>(count).fill('50 %')) }))).toEqual([false, false, true])
  })
  it.each([
    ['each not begun', bays('not begun', 'not begun')],
    ['1 of 3 done', bays('done', '60 %', 'not begun')],
    ['none of 2 done', bays('60 %', 'not begun')],
  ])('%s', (words, told) => {
    expect(bayWords(told)).toBe(words)
  })
})
