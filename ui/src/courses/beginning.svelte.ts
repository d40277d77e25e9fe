// A new course while its six questions are answered: what was typed is checked as it is typed, and
// what is wrong is told once the line has been left.
import type { Reply } from '../backend'
import type { AnswersChecked, BeginChoices, ComesTo, Trouble, View } from '../bindings'
import type { Asking } from '../common/asking'
import { idOf } from '../common/field'

type Answers = Record<string, string>
export type BeginRust = {
  beginChoices: (zone: string) => Promise<Reply<BeginChoices>>
  checkAnswers: (answers: Answers) => Promise<Reply<AnswersChecked>>
  beginCourse: (answers: Answers) => Promise<Reply<View | null>>
}

/** Answers are checked when nothing was typed for so long. */
export const CHECK_MS = 120

const COUNTRY = 'venue.country'
const ZONE = 'venue.time_zone'
/** What is wrong with one may be told at the other. */
const TOGETHER: readonly (readonly string[])[] = [
  ['day.0.start', 'day.0.finish'],
  ['venue.latitude', 'venue.longitude', ZONE],
  ['group.novices', 'group.improvers', 'group.experienced'],
]

export class Beginning implements Asking {
  choices: BeginChoices | undefined = $state.raw()
  comesTo: ComesTo | null = $state.raw(null)
  /** What went wrong, if it is about no answer. */
  trouble: Trouble | undefined = $state.raw()
  #answers: Answers = $state.raw({})
  #troubles: readonly Trouble[] = $state.raw([])
  /** Lines that were left: only there it is told what is wrong. */
  #left: readonly string[] = $state.raw([])
  /** Units follow the country until they are chosen. */
  #unitsChosen = false
  #timer: ReturnType<typeof setTimeout> | undefined
  #round = 0
  #rust: BeginRust
  #put: (question: () => Promise<Reply<View | null>>) => Promise<void>

  constructor(rust: BeginRust, put: (question: () => Promise<Reply<View | null>>) => Promise<void>) {
    this.#rust = rust
    this.#put = put
  }

  /** Asks what may be chosen, the first time; answers that stand there stay. */
  async look() {
    if (this.choices) return
    const reply = await this.#rust.beginChoices(Intl.DateTimeFormat().resolvedOptions().timeZone)
    this.trouble = reply.ok ? undefined : reply.trouble
    if (!reply.ok) return
    this.choices = reply.value
    this.#answers = reply.value.usual
    await this.#check()
  }

  text(key: string): string {
    return this.#answers[key] ?? ''
  }

  troubleAt(key: string): Trouble | undefined {
    return this.#left.includes(key) ? this.#troubles.find((it) => it.key === key) : undefined
  }

  /** The time zones of the country that was chosen. */
  get zones(): readonly string[] {
    return this.#country()?.zones ?? this.choices?.zones ?? []
  }

  get units(): string {
    return this.text('units')
  }

  /** Whether the course will show times by the clock of twice twelve hours. */
  get american(): boolean {
    return this.#country()?.american ?? false
  }

  enter() {}

  leave(key: string) {
    const together = TOGETHER.find((keys) => keys.includes(key)) ?? [key]
    this.#left = [...this.#left, ...together]
  }

  type(key: string, text: string) {
    this.#answers = { ...this.#answers, [key]: text }
    clearTimeout(this.#timer)
    this.#timer = setTimeout(() => void this.#check(), CHECK_MS)
  }

  choose(key: string, text: string) {
    this.#answers = { ...this.#answers, [key]: text }
    if (key === 'units') this.#unitsChosen = true
    if (key === COUNTRY) this.#follow()
    clearTimeout(this.#timer)
    return this.#check()
  }

  /** Makes the course; or tells all that is wrong, and leads to the first of it. */
  async make() {
    clearTimeout(this.#timer)
    await this.#check()
    this.#left = Object.keys(this.#answers)
    const [first] = this.#troubles
    if (first) return void document.getElementById(`field-${idOf(first.key)}`)?.focus()
    await this.#put(() => this.#rust.beginCourse(this.#answers))
  }

  /** The next one begins anew. */
  forget() {
    this.choices = undefined
    this.#left = []
    this.#unitsChosen = false
  }

  #country() {
    return this.choices?.countries.find(({ code }) => code === this.text(COUNTRY))
  }

  /** What goes with a country. */
  #follow() {
    const country = this.#country()
    const [usual] = country?.zones ?? []
    if (!country || !usual) return
    if (!country.zones.includes(this.text(ZONE))) this.#answers = { ...this.#answers, [ZONE]: usual }
    if (!this.#unitsChosen) this.#answers = { ...this.#answers, units: country.units }
  }

  /** The newest answer counts. */
  async #check() {
    const round = ++this.#round
    const reply = await this.#rust.checkAnswers(this.#answers)
    if (round !== this.#round) return
    this.trouble = reply.ok ? undefined : reply.trouble
    if (!reply.ok) return
    this.#troubles = reply.value.troubles
    this.comesTo = reply.value.comes_to
  }
}
