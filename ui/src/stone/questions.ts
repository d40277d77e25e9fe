// What is asked about stone.
import { COMMON, type Choice, type Question } from '../common/field'

/** The rock, of those the table holds, or its density as weighed. */
export const rock = (choices: readonly Choice[]): readonly Question[] => [
  { key: 'stone.kind', label: 'Stone', kind: 'choice', choices, unset: 'a middling rock' },
  {
    key: 'stone.density', label: 'Its density', unset: 'as the table says',
    help: 'Solid stone, such as 2600 kg/m3. Weigh a few of your own where tonnes matter.',
  },
]

const HEAP: Question = { key: 'stone.on_site', label: 'Lies there already', unset: 'none', help: 'Such as 4 t.' }
const HEAPS: readonly (readonly [kind: string, label: string])[] = [
  ['footing', 'Footing there'], ['face', 'Face there'], ['hearting', 'Hearting there'],
  ['throughs', 'Throughs there'], ['copes', 'Copes there'],
]

/** One heap, or each kind by itself, as the file has it. */
export function supply(byKind: boolean): readonly Question[] {
  const heaps = HEAPS.map(([kind, label]) => ({ key: `stone.on_site.${kind}`, label, unset: 'none' }))
  return [
    ...(byKind ? heaps : [HEAP]),
    { key: 'stone.load', label: 'One load', unset: 'not said', help: 'What one delivery brings.' },
    { key: 'stone.most', label: 'No more than', unset: 'no limit', help: 'Of all that can be had; it limits the length.' },
    {
      key: 'stone.lead_days', label: 'Working days ahead', kind: 'number', unset: '10', from: COMMON,
      help: 'From order to delivery.',
    },
    { key: 'stone.closed', label: 'Quarry closed on', unset: 'weekends only', help: 'Dates, such as 2027-04-02; commas between.' },
    { key: 'stone.practice_pitch', label: 'A practice pitch: built and taken down before, its stone lies there', kind: 'switch', wide: true },
  ]
}

/** An old wall to strip out: only its length need be said. */
export const OLD_WALL: readonly Question[] = [
  { key: 'stone.old_wall.length', label: 'Length', unset: 'no old wall', help: 'How much is stripped out.' },
  { key: 'stone.old_wall.height', label: 'Height', unset: 'as the new wall', help: 'To the underside of its cope.' },
  { key: 'stone.old_wall.base_width', label: 'Width at the ground', unset: 'as the new wall' },
  { key: 'stone.old_wall.top_width', label: 'Width at the top', unset: 'as the new wall' },
  { key: 'stone.old_wall.cope_height', label: 'Its cope', unset: 'gone' },
  { key: 'stone.old_wall.reused', label: 'Used again', kind: 'number', unset: '0.8', from: COMMON, help: 'Share of its stone.' },
]

export const SHARES: readonly Question[] = [
  {
    key: 'stone.voids', label: 'Air in the wall', kind: 'number', unset: '0.25', help: 'A share: 0.25 is a quarter.',
    from: 'published range 0.20 to 0.45, Mundell 2009',
  },
  { key: 'stone.hearting_share', label: 'Hearting', kind: 'number', unset: '0.2', from: COMMON, help: "Share of the body's stone." },
  {
    key: 'stone.waste', label: 'Left over', kind: 'number', unset: '0.2', from: COMMON,
    help: 'Share of what is delivered; beginners need choice.',
  },
]
