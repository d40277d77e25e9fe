// What was typed is let go of now and then, and no frame is left behind.
import { afterEach, expect, it, vi } from 'vitest'
import { fieldLeft } from './way-back'

afterEach(() => vi.unstubAllGlobals())

it('lets go once for a hundred fields, and for nothing else that is left', () => {
  const told: string[] = []
  class Input extends EventTarget {}
  vi.stubGlobal('HTMLInputElement', Input)
  vi.stubGlobal('document', {
    createElement: (name: string) => ({ remove: () => told.push(`${name} goes`) }),
    body: { append: () => told.push('comes') },
  })
  const leave = (times: number, target: EventTarget) => Array.from({ length: times }, () => fieldLeft({ target }))
  leave(300, new EventTarget())
  leave(99, new Input())
  expect(told).toEqual([])
  leave(1, new Input())
  expect(told).toEqual(['comes', 'iframe goes'])
  leave(100, new Input())
  expect(told).toHaveLength(4)
})
