// @vitest-environment jsdom
// Markup that comes in again: what is the same stays, and in the end all is as it came.
import { describe, expect, it } from 'vitest'
import { markup } from './markup'

const page = (...parts: string[]) => `<svg viewBox="0 0 9 9">${parts.join('')}</svg>`
const stone = (at: number) => `<path d="M${at} 0h1v1z"></path>`
const words = (said: string) => `<text x="1">${said}</text>`

const CHANGES: [string, string, string][] = [
  ['the same again', page(stone(1), words('Base')), page(stone(1), words('Base'))],
  ['other words', page(stone(1), words('0.66 m')), page(stone(1), words('0.70 m'))],
  ['an attribute more, one other, one gone', '<b id="a" class="x"></b>', '<b id="c" title="y"></b>'],
  ['more at the end', page(stone(1)), page(stone(1), stone(2), stone(3))],
  ['more at the beginning', page(stone(3)), page(stone(1), stone(2), stone(3))],
  ['more in the middle', page(stone(1), stone(9)), page(stone(1), stone(2), stone(3), stone(9))],
  ['fewer at the beginning', page(stone(1), stone(2), stone(3)), page(stone(3))],
  ['fewer in the middle', page(stone(1), stone(2), stone(3), stone(9)), page(stone(1), stone(9))],
  ['some other and fewer', page(stone(1), stone(2), stone(3), words('End')), page(stone(4), words('End'))],
  ['another element', page(stone(1), stone(2)), page(words('One'), stone(2))],
  ['words where an element was', '<p><b>one</b></p>', '<p>one</p>'],
  ['an element where words were', '<p>one</p>', '<p><b>one</b></p>'],
  ['twice the same', page(stone(1), stone(1)), page(stone(1), stone(1), stone(1))],
  ['nothing', page(stone(1)), ''],
  ['something for the first time', '', page(stone(1))],
  ['another page', page(stone(1), words('a')), '<svg><g><text>b</text></g></svg><p>c</p>'],
]

describe('an element whose markup comes in again', () => {
  it.each(CHANGES)('is as it came: %s', (_, before, after) => {
    const element = document.createElement('div')
    for (const text of [before, after, before]) {
      markup(text)(element)
      expect(element.innerHTML).toBe(text)
    }
  })

  it('keeps what is the same', () => {
    const element = document.createElement('div')
    markup(page(stone(1), words('0.66 m'), stone(2)))(element)
    const kept = ['svg', 'path', 'path:last-child'].map((it) => element.querySelector(it))
    const label = element.querySelector('text')
    markup(page(stone(1), words('0.70 m'), stone(2)))(element)
    expect(['svg', 'path', 'path:last-child'].map((it) => element.querySelector(it))).toEqual(kept)
    expect(kept.every((it) => element.contains(it))).toBe(true)
    expect(element.contains(label)).toBe(false)
  })

  it('is put in anew where most is other', () => {
    const element = document.createElement('div')
    markup(page(stone(1), stone(2), words('0.66 m')))(element)
    const svg = element.querySelector('svg')
    markup(page(stone(3), stone(4), words('0.66 m')))(element)
    expect(element.contains(svg)).toBe(false)
  })

  it('compares what was made ready', () => {
    const element = document.createElement('div')
    const ready = (fresh: Element) => fresh.firstElementChild?.prepend(document.createElement('i'))
    markup('<b>one</b>', ready)(element)
    const kept = element.querySelector('b')
    markup('<b>one</b>', ready)(element)
    expect(element.innerHTML).toBe('<b><i></i>one</b>')
    expect(element.querySelector('b')).toBe(kept)
  })

  it('keeps its own attributes', () => {
    const element = document.createElement('div')
    element.setAttribute('class', 'leaf')
    markup('<b></b>')(element)
    expect(element.outerHTML).toBe('<div class="leaf"><b></b></div>')
  })
})
