// What the place of the kit does to its rules.
import type { RuleKey, Trouble } from '../bindings'

export type RuleActions = {
  /** What was refused, if anything. */
  change: (item: string, keys: RuleKey[], forGood: boolean) => Promise<Trouble | undefined>
  takeBack: (item: string, forGood: boolean) => Promise<Trouble | undefined>
}
