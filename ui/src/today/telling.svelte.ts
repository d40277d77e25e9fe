// What is being told: for which time, of which stage, and what came of it.
import type { Trouble } from '../bindings'
import type { DayActions } from '../common/day-actions'
import type { When } from './when'

export class Telling {
  /** A time the person has set; else the clock goes on. */
  own: When | undefined = $state.raw()
  /** A stage that is asked about beside those that are due. */
  also: string = $state('')
  /** Shares that are typed and not yet told, by stage and bay. */
  shares: Record<string, string> = $state.raw({})
  trouble: Trouble | undefined = $state.raw()
  /** What was told last, as a sentence. */
  said: string = $state('')

  #actions: Pick<DayActions, 'tell' | 'untell'>

  constructor(actions: Pick<DayActions, 'tell' | 'untell'>) {
    this.#actions = actions
  }

  share = (stage: string, bay: number | null) => this.shares[keyOf(stage, bay)] ?? ''

  type(stage: string, bay: number | null, words: string) {
    this.shares = { ...this.shares, [keyOf(stage, bay)]: words }
  }

  /** A bay counts from 0; all of them where it is null. `time` is that of `when` as the course writes it. */
  async tell(when: When, stage: { id: string; name: string }, bay: number | null, done: string, time: string) {
    this.trouble = await this.#actions.tell({ ...when, stage: stage.id, bay, done })
    if (this.trouble) {
      this.said = ''
      return
    }
    this.type(stage.id, bay, '')
    this.said = `Told for ${time}: ${stage.name}, ${bayName(bay)}, ${shareWords(done)}.`
  }

  async takeBack(at: number, what: string) {
    this.trouble = await this.#actions.untell(at)
    this.said = this.trouble ? '' : `Taken back: ${what}.`
  }

  /** Another course is another day. */
  forget() {
    this.own = undefined
    this.also = ''
    this.shares = {}
    this.trouble = undefined
    this.said = ''
  }
}

/** `60` was meant as per cent. */
export const shareWords = (typed: string) => (/^\s*\d+\s*$/.test(typed) ? `${typed.trim()} %` : typed.trim())

const keyOf = (stage: string, bay: number | null) => `${stage}.${bay ?? 'all'}`

/** Bays are counted from 1 by people. */
export const bayName = (bay: number | null) => (bay === null ? 'all bays' : `bay ${bay + 1}`)
