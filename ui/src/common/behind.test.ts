// Reasons and meanings: asked for when they are opened, put away at the same place, never mixed up.
import { describe, expect, it, vi } from 'vitest'
import type { Reason, Sketch, Term } from '../bindings'
import { Glossary } from './glossary.svelte'
import { Reasons } from './reasons.svelte'

const reason = (id: string, figure: string): Reason => ({
  id, title: id, figure, sentences: [`${figure}, because.`], steps: [], sources: [],
})
const term = (word: string, drawing: string | null): Term => ({
  word, also: [], meaning: 'What it means.', everyday: false, drawing, source: '',
})
const button = () => ({ getBoundingClientRect: () => ({ left: 1, top: 2, bottom: 3 }), focus: vi.fn() })
const given = <T>(value: T) => ({ ok: true, value }) as const

describe('reasons', () => {
  const focus = vi.fn()
  vi.stubGlobal('document', { getElementById: (id: string) => ({ focus: () => focus(id), scrollIntoView: () => {} }) })

  it('are asked for when one opens, and again when the course changes', async () => {
    let figure = '9.00 m'
    const asked = vi.fn(async () => given([reason('length', figure)]))
    const reasons = new Reasons({ reasons: asked })
    reasons.courseChanged()
    expect(asked).not.toHaveBeenCalled()
    await reasons.press('length', 'figure-length')
    expect(reasons.said).toBe('Why length, 9.00 m: 9.00 m, because.')
    figure = '8.75 m'
    reasons.courseChanged()
    await vi.waitFor(() => expect(reasons.reason?.figure).toBe('8.75 m'))
    expect(asked).toHaveBeenCalledTimes(2)
  })
  it('close at the same button, and the focus is back there', async () => {
    const reasons = new Reasons({ reasons: async () => given([reason('length', '9 m')]) })
    await reasons.press('length', 'wall-length')
    expect(reasons.isOpen('figure-length')).toBe(false)
    await reasons.press('length', 'wall-length')
    expect(reasons.open).toBeUndefined()
    expect(focus).toHaveBeenLastCalledWith('why-wall-length')
  })
  it('say where there is none', async () => {
    const reasons = new Reasons({ reasons: async () => given([]) })
    expect(reasons.none).toBe(false)
    await reasons.press('copes', 'copes')
    expect(reasons.none).toBe(true)
  })
})

describe('meanings', () => {
  const through = term('through', 'through-on-both-faces')
  const bed = term('bed', 'level-bed')

  it('ask for a sketch once, without what the window does not allow', async () => {
    const sketch = vi.fn(async () => given({ svg: '<svg style="x"><g/></svg>', words: 'a through', of_the_course: false }))
    const glossary = new Glossary({ words: async () => given([through]), sketch })
    const [one, other] = [button(), button()]
    await glossary.press(through, one)
    expect(glossary.sketch?.svg).toBe('<svg><g/></svg>')
    await glossary.press(through, other)
    expect([glossary.isOpen(through, one), glossary.isOpen(through, other)]).toEqual([false, true])
    await glossary.press(through, other)
    expect(glossary.open).toBeUndefined()
    expect(other.focus).toHaveBeenCalledOnce()
    expect(sketch).toHaveBeenCalledOnce()
  })
  it('show no drawing of a word pressed before', async () => {
    let late = (): void => {}
    const sketch = (name: string) =>
      name === 'level-bed' ? Promise.resolve(given({ svg: 'bed', words: '', of_the_course: false }))
      : new Promise<ReturnType<typeof given<Sketch>>>((done) => (late = () => done(given({ svg: 'through', words: '', of_the_course: false }))))
    const glossary = new Glossary({ words: async () => given([]), sketch })
    const slow = glossary.press(through, button())
    await glossary.press(bed, button())
    late()
    await slow
    expect(glossary.sketch?.svg).toBe('bed')
  })
})
