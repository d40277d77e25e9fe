import { expect, it } from 'vitest'
import { unmetOf } from './unmet'

it('tells wishes about lessons from those about pairs', () => {
  const view = { plan: { unmet: [{ wish: 2 }, { wish: null }] }, written: { running: { unmet: ['Copes', 'Ann'] } } }
  expect(unmetOf(view, 'lessons')).toEqual(['Copes'])
  expect(unmetOf(view, 'pairs')).toEqual(['Ann'])
})
