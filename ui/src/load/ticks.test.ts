import { expect, it } from 'vitest'
import type { WrittenRun } from '../bindings'
import { lineOf, Ticks } from './ticks.svelte'
import { vehicle, vehiclesOf } from './questions'

const run = (count: number): WrittenRun => ({
  number: 1,
  holds: [
    { name: 'Van', mass: '', limit: '', share: '', lines: [{ item: 'Spade', count, mass: '', carried: '' }] },
    { name: 'Trailer', mass: '', limit: '', share: '', lines: [{ item: 'Spade', count: 1, mass: '', carried: '' }] },
  ],
})
const line = (of: WrittenRun, hold: number) => lineOf(of, of.holds[hold]!, of.holds[hold]!.lines[0]!)

it('is ticked for its vehicle, and open again when its count has changed', () => {
  const ticks = new Ticks()
  ticks.put(line(run(4), 0), true)
  expect(ticks.has(line(run(4), 0))).toBe(true)
  expect(ticks.has(line(run(4), 1))).toBe(false)
  expect(ticks.of(run(4))).toEqual({ ticked: 1, all: 2 })
  expect(ticks.of(run(5))).toEqual({ ticked: 0, all: 2 })
  ticks.put(line(run(4), 0), false)
  expect(ticks.of(run(4)).ticked).toBe(0)
})

it('is forgotten with the course', () => {
  const ticks = new Ticks()
  ticks.put(line(run(4), 1), true)
  ticks.forget()
  expect(ticks.of(run(4)).ticked).toBe(0)
})

it('asks for the vehicles the file has, in order', () => {
  expect(vehiclesOf({ 'vehicle.10.name': 'b', 'vehicle.2.payload': '1 t', 'vehicle.2.name': 'a', 'venue.name': '' })).toEqual([2, 10])
  expect(vehicle(2).map((it) => it.key)).toContain('vehicle.2.people')
})
