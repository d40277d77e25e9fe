// Which steps ask for attention, and why, in words.
import type { WrittenToDo } from '../bindings'
import { stepOfKey, stepOfToDo, type StepId } from '../common/steps'

export type Marks = Partial<Record<StepId, string>>

/** What was refused weighs more than what is still to do. */
export function marks(toDo: readonly Pick<WrittenToDo, 'id' | 'part' | 'counts'>[], refused: readonly string[]): Marks {
  const found: Marks = {}
  for (const it of toDo) {
    const step = stepOfToDo(it)
    if (step && it.counts) found[step] = '(something to do)'
  }
  for (const key of refused) found[stepOfKey(key)] = '(something was not taken)'
  return found
}
