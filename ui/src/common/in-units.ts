// Quantities in what a place asks, in the units of the course.
// The window does no sums: what each comes to stands here, and the test beside works it out again.

/** What holds while a field is empty, to a sixteenth of an inch as every figure is written. */
export const DEFAULTS: Readonly<Record<string, string>> = {
  '3 m': '9 ft 10 1/8 in',
  '1.5 m': '4 ft 11 1/16 in',
  '0.9 m': '2 ft 11 7/16 in',
  '0.45 m': '1 ft 5 11/16 in',
  '0.3 m': '11 13/16 in',
  '0.14 m': '5 1/2 in',
  '0.12 m': '4 3/4 in',
  '0.1 m': '3 15/16 in',
  '0.025 m': '1 in',
  '0 m': '0 in',
  '1.8 m': '5 ft 10 7/8 in',
  '4.8 m': '15 ft 9 in',
  '0.6 m': '1 ft 11 5/8 in',
  '1800 kg/m3': '112 lb/ft3',
  '80 kg': '176 lb',
}

/** What is named only to show how it is typed, in round numbers of either. */
export const EXAMPLES: Readonly<Record<string, string>> = {
  '9 m': '30 ft',
  '75 mm': '3 in',
  '4 t': '4 short tons',
  '700 kg': '1500 lb',
  '2600 kg/m3': '160 lb/ft3',
}

const IMPERIAL = { ...DEFAULTS, ...EXAMPLES }
const QUANTITY = /(?<![\d.])\d+(?:\.\d+)? (?:kg\/m3|kg|mm|m|t)(?![\w/])/g

/** A text that was written in metric, with its quantities as this course has them. */
export function inUnits(text: string, units: string): string {
  return units === 'imperial' ? text.replace(QUANTITY, (it) => IMPERIAL[it] ?? it) : text
}
