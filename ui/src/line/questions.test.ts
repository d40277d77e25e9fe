import { expect, test } from 'vitest'
import { rowsOf, stretch } from './questions'

const values = {
  'wall.line.0.straight': '4 m',
  'wall.line.1.arc': '3 m',
  'wall.line.1.radius': '6 m',
  'wall.line.1.turn': 'left',
  'wall.ground.0.station': '0 m',
}

test('rows are found in order, each once', () => {
  expect(rowsOf(values, 'line')).toEqual([0, 1])
  expect(rowsOf(values, 'ground')).toEqual([0])
})

test('only an arc is asked for its radius', () => {
  expect(stretch(values, 0)).toHaveLength(1)
  expect(stretch(values, 1).map((it) => it.key)).toContain('wall.line.1.radius')
})
