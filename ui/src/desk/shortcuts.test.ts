import { expect, it } from 'vitest'
import { shortcut } from './shortcuts'

const keys = (key: string, held: string) => ({
  key, ctrlKey: held.includes('ctrl'), metaKey: held.includes('meta'),
  shiftKey: held.includes('shift'), altKey: held.includes('alt'),
})

it.each([
  ['o', 'ctrl', 'open'], ['s', 'ctrl', 'save'], ['S', 'ctrl shift', 'saveAs'], ['z', 'ctrl', 'undo'],
  ['Z', 'ctrl shift', 'redo'], ['y', 'ctrl', 'redo'], ['p', 'ctrl', 'print'], ['s', 'meta', 'save'],
  ['z', '', undefined], ['o', 'ctrl alt', undefined], ['O', 'ctrl shift', undefined], ['a', 'ctrl', undefined],
])('%s with %s is %s', (key, held, action) => expect(shortcut(keys(key, held))).toBe(action))
