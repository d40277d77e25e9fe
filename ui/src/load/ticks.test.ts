import { expect, it } from 'vitest'
import type { WrittenRun } from '../bindings'
import { lineOf, Ticks } from './ticks.svelte'
import { vehicle, vehiclesOf } from './questions'

/** A folder of ticks that outlives the window. */
const folder = (kept: readonly string[] = []) => {
  const disk = { kept }
  const rust = {
    ticks: async () => ({ ok: true as const, value: [...disk.kept] }),
    keepTicks: async (ticked: readonly string[]) => {
      disk.kept = ticked
      return { ok: true as const, value: null }
    },
  }
  return { disk, rust }
}

const run = (count: number): WrittenRun => ({
  number: 1,
  holds: [
    { name: 'Van', mass: '', limit: '', share: '', lines: [{ item: 'Spade', count, mass: '', carried: '' }] },
    { name: 'Trailer', mass: '', limit: '', share: '', lines: [{ item: 'Spade', count: 1, mass: '', carried: '' }] },
  ],
})
const line = (of: WrittenRun, hold: number) => lineOf(of, of.holds[hold]!, of.holds[hold]!.lines[0]!)

it('is ticked for its vehicle, and open again when its count has changed', () => {
  const ticks = new Ticks(folder().rust)
  ticks.put(line(run(4), 0), true)
  expect(ticks.has(line(run(4), 0))).toBe(true)
  expect(ticks.has(line(run(4), 1))).toBe(false)
  expect(ticks.of(run(4))).toEqual({ ticked: 1, all: 2 })
  expect(ticks.of(run(5))).toEqual({ ticked: 0, all: 2 })
  ticks.put(line(run(4), 0), false)
  expect(ticks.of(run(4)).ticked).toBe(0)
})

it('is forgotten with the course', () => {
  const ticks = new Ticks(folder().rust)
  ticks.put(line(run(4), 1), true)
  ticks.forget()
  expect(ticks.of(run(4)).ticked).toBe(0)
})

it('is there when the course is opened again', async () => {
  const { disk, rust } = folder()
  const ticks = new Ticks(rust)
  ticks.put('one', true)
  ticks.put('two', true)
  ticks.put('one', false)
  await ticks.saved()
  expect(disk.kept).toEqual(['two'])
  const later = new Ticks(rust)
  await later.look()
  expect([later.has('one'), later.has('two')]).toEqual([false, true])
})

it('keeps what was ticked while the folder was being read', async () => {
  const ticks = new Ticks(folder(['old']).rust)
  const looking = ticks.look()
  ticks.put('new', true)
  await looking
  expect([ticks.has('old'), ticks.has('new')]).toEqual([false, true])
})

it('says why ticks could not be kept', async () => {
  const trouble = { code: 'disk-full', key: '', what: 'the disk is full', cure: '' }
  const ticks = new Ticks({ ...folder().rust, keepTicks: async () => ({ ok: false as const, trouble }) })
  ticks.put('one', true)
  await ticks.saved()
  expect([ticks.trouble, ticks.has('one')]).toEqual([trouble, true])
})

it('asks for the vehicles the file has, in order', () => {
  expect(vehiclesOf({ 'vehicle.10.name': 'b', 'vehicle.2.payload': '1 t', 'vehicle.2.name': 'a', 'venue.name': '' })).toEqual([2, 10])
  expect(vehicle(2).map((it) => it.key)).toContain('vehicle.2.people')
})
