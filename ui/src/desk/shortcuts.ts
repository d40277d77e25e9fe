// Which keys stand for which action.

export type Action = 'open' | 'save' | 'saveAs' | 'undo' | 'redo' | 'print'
export type Actions = Record<Action, () => Promise<void>>

type Keys = Pick<KeyboardEvent, 'key' | 'ctrlKey' | 'metaKey' | 'shiftKey' | 'altKey'>

const PLAIN: Record<string, Action> = { o: 'open', s: 'save', z: 'undo', y: 'redo', p: 'print' }
const SHIFTED: Record<string, Action> = { s: 'saveAs', z: 'redo' }

/** The action of these keys, held with Ctrl, or with Command where there is no Ctrl. */
export function shortcut(keys: Keys): Action | undefined {
  if (keys.altKey || !(keys.ctrlKey || keys.metaKey)) return undefined
  return (keys.shiftKey ? SHIFTED : PLAIN)[keys.key.toLowerCase()]
}
