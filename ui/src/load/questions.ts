// What is asked about the vehicles, and which of them the file has.
import type { Question } from '../common/field'

/** Heads of the rows; each field says them again for those who only hear it. */
export const VEHICLE = ['Vehicle', 'Payload', 'Trailer', 'People'] as const

export function vehicle(at: number): readonly Question[] {
  const key = `vehicle.${at}`
  const label = (what: string) => `Vehicle ${at + 1}, ${what}`
  return [
    { key: `${key}.name`, label: label('name') },
    { key: `${key}.payload`, label: label('payload') },
    { key: `${key}.trailer`, label: label('trailer'), unset: 'none' },
    { key: `${key}.people`, label: label('people in it'), kind: 'number', unset: '0' },
  ]
}

/** The places of the vehicles in the file, in order. */
export function vehiclesOf(values: Record<string, string>): number[] {
  const found = new Set<number>()
  for (const key of Object.keys(values)) {
    const [, at] = /^vehicle\.(\d+)\./.exec(key) ?? []
    if (at !== undefined) found.add(Number(at))
  }
  return [...found].sort((one, other) => (one < other ? -1 : 1))
}
