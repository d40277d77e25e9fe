import { expect, it } from 'vitest'
import { marks } from './marks'

it('marks a step for what is to do there, and more so for what was refused there', () => {
  const marked = marks([{ id: 'stone' }, { id: 'chance' }, { id: 'of a newer program' }], ['wall.height'])
  expect(marked.stone).toContain('to do')
  expect(marked.wall).toContain('not taken')
  expect(Object.keys(marked)).toEqual(['stone', 'wall'])
})
