// What quantities come to in feet and pounds is worked out again, and none of a question is forgotten.
/* eslint-disable no-restricted-syntax -- sums only to check what stands there; the window does none */
import { expect, test } from 'vitest'
import { DEFAULTS, EXAMPLES, inUnits } from './in-units'

/** Exactly, by definition: 25.4 mm to the inch, 0.45359237 kg to the pound, 2000 pounds to the short ton. */
const POUND = 0.45359237
const METRES: Record<string, number> = { m: 1, mm: 0.001, ft: 0.3048, in: 0.0254 }
const OTHERS: Record<string, number> = {
  kg: 1, t: 1000, lb: POUND, 'short tons': 2000 * POUND, 'kg/m3': 1, 'lb/ft3': POUND / 0.3048 ** 3,
}

function worth(words: string): number {
  const parts = [...words.matchAll(/(\d+(?:\.\d+)?)(?: (\d+)\/(\d+))? (kg\/m3|lb\/ft3|short tons|kg|lb|mm|ft|in|m|t)\b/g)]
  expect(parts.map(([all]) => all).join(' ')).toBe(words)
  const one = (whole = '', over = '0', under = '1', unit = '') =>
    (Number(whole) + Number(over) / Number(under)) * (METRES[unit] ?? OTHERS[unit] ?? NaN)
  return parts.reduce((sum, [, whole, over, under, unit]) => sum + one(whole, over, under, unit), 0)
}

test.each(Object.entries(DEFAULTS))('%s is %s', (metric, imperial) => {
  const away = Math.abs(worth(metric) - worth(imperial))
  expect(away).toBeLessThan(imperial.includes('lb') ? 0.005 * worth(metric) : 0.0254 / 32 + 1e-9)
})

test.each(Object.entries(EXAMPLES))('%s is about %s', (metric, imperial) => {
  expect(Math.abs(worth(imperial) / worth(metric) - 1)).toBeLessThan(0.1)
})

test('only whole quantities are put in other units, and only where feet and pounds are asked for', () => {
  const said = 'Left empty: 3 m; not 13 m, 1.5 m, 0 to 75 mm, 0.5 t/m3.'
  expect(inUnits(said, 'metric')).toBe(said)
  expect(inUnits(said, '')).toBe(said)
  expect(inUnits(said, 'imperial')).toBe('Left empty: 9 ft 10 1/8 in; not 13 m, 4 ft 11 1/16 in, 0 to 3 in, 0.5 t/m3.')
})

test('every quantity that a place names has its like', async () => {
  const files = import.meta.glob<string>(['../*/questions.ts', '../load/Vehicles.svelte'], { query: '?raw', import: 'default' })
  const texts = await Promise.all(Object.values(files).map((read) => read()))
  const named = texts.join('\n').matchAll(/(?<![\d.])\d+(?:\.\d+)? (?:kg\/m3|kg|mm|m|t)(?![\w/])/g)
  const alone = [...named].map(([it]) => it).filter((it) => inUnits(it, 'imperial') === it)
  expect(alone).toEqual([])
})
