import { expect, it } from 'vitest'
import { marks } from './marks'

const toDo = (id: string, part: string, counts = true) => ({ id, part, counts })

it('marks a step for what is to do there, and more so for what was refused there', () => {
  const marked = marks([toDo('stone', 'stone'), toDo('chance', 'wall'), toDo('new', 'of a newer program')], ['wall.height'])
  expect(marked.stone).toContain('to do')
  expect(marked.wall).toContain('not taken')
  expect(Object.keys(marked)).toEqual(['stone', 'wall'])
})

it('marks no step for what is done or only a reminder', () => {
  expect(marks([toDo('toilets', 'venue', false)], [])).toEqual({})
})
