// What is asked about the wall.
import { COMMON, type Question } from '../common/field'

const PLUMB = 'Or plumb: straight up.'

export function section(oneBatter: boolean): readonly Question[] {
  const faces: readonly Question[] = oneBatter
    ? [{ key: 'wall.batter', label: 'Batter, 1 in', kind: 'number', help: `8 is 1 in 8, both faces. ${PLUMB}` }]
    : [
        { key: 'wall.batter.left', label: 'Batter left, 1 in', kind: 'number', help: PLUMB },
        { key: 'wall.batter.right', label: 'Batter right, 1 in', kind: 'number', help: PLUMB },
      ]
  return [
    { key: 'wall.height', label: 'Height', help: 'Ground to the underside of the cope.' },
    { key: 'wall.top_width', label: 'Width at the top', help: 'Under the cope.' },
    ...faces,
  ]
}

export const LENGTH: readonly Question[] = [
  { key: 'wall.length', label: 'Length', unset: 'auto', help: 'auto sizes it to the group; or a length, such as 9 m.' },
  { key: 'venue.longest_wall', label: 'Room on the site', unset: 'no limit', help: 'The longest wall that fits.' },
  {
    key: 'pace.chance', label: 'Chance to keep', kind: 'number', unset: '0.8', from: COMMON,
    help: 'Of finishing, for auto: 0.8 is four courses in five.',
  },
]

const END = [['head', 'built end'], ['joined', 'joined'], ['raked', 'raked back']] as const

export const BANK_SIDE: readonly Question[] = [
  {
    key: 'wall.retained', label: 'Holds back a bank', kind: 'choice', unset: 'no, it stands free', wide: true,
    choices: [['left', 'on the left'], ['right', 'on the right']], help: 'Looking from station 0.',
  },
]

/** The bank behind a retaining wall; what is left empty comes from the table of usual figures. */
export const BANK: readonly Question[] = [
  { key: 'wall.bank.drainage', label: 'Drainage stone', unset: '0.3 m', from: COMMON, help: 'Thickness behind the wall.' },
  { key: 'wall.bank.height', label: 'Bank, height', unset: 'up to the top' },
  {
    key: 'wall.bank.slope_degrees', label: 'Bank, slope', kind: 'number', unset: '0', help: 'Degrees, rising from the wall.',
  },
  { key: 'wall.bank.load_kpa', label: 'Load above', kind: 'number', unset: '0', help: 'kN on each square metre.' },
  { key: 'wall.bank.fill', label: 'Fill', unset: '1800 kg/m3', from: COMMON, help: 'As it lies.' },
  { key: 'wall.bank.friction_degrees', label: 'Friction in the fill', kind: 'number', unset: '30', from: COMMON, help: 'Degrees.' },
  {
    key: 'wall.bank.wall_friction_degrees', label: 'Friction at the back', kind: 'number', unset: '20', from: COMMON,
    help: 'Degrees.',
  },
  {
    key: 'wall.bank.base_friction_degrees', label: 'Friction under the wall', kind: 'number', unset: '30', from: COMMON,
    help: 'Degrees.',
  },
  { key: 'wall.bank.near_boundary', label: 'Near a boundary', kind: 'switch' },
  { key: 'wall.bank.near_building', label: 'Near a building', kind: 'switch' },
]

export const ENDS: readonly Question[] = [
  { key: 'wall.ends.start', label: 'At station 0', kind: 'choice', choices: END, unset: 'built end' },
  { key: 'wall.ends.finish', label: 'At the far end', kind: 'choice', choices: END, unset: 'built end' },
  {
    key: 'wall.head_batter', label: 'Built ends lean 1 in', kind: 'number', unset: 'plumb', from: COMMON,
    help: 'Back from the foot.',
  },
]

export const COPE: readonly Question[] = [
  { key: 'wall.cope_height', label: 'Cope height', unset: 'no cope' },
  {
    key: 'wall.cope_thickness', label: 'Cope thickness', unset: '0.1 m', from: COMMON, help: 'Of one stone, along the wall.',
  },
]

export const THROUGHS: readonly Question[] = [
  {
    key: 'wall.through_rows', label: 'Rows, heights', unset: 'no throughs', help: 'Above the ground; commas between rows.',
  },
  {
    key: 'wall.throughs', label: 'They reach', kind: 'choice', unset: 'across',
    choices: [['across', 'from face to face'], ['three-quarter', 'three quarters, from each face in turn']],
  },
  { key: 'wall.through_spacing', label: 'Spacing', unset: '0.9 m', from: COMMON, help: 'Along a row.' },
  { key: 'wall.through_size.width', label: 'Width', unset: '0.3 m', from: COMMON, help: 'Along the wall.' },
  { key: 'wall.through_size.thickness', label: 'Thickness', unset: '0.12 m', from: COMMON },
  {
    key: 'wall.through_size.projection', label: 'Projection', unset: '0 m', help: 'Beyond each face; 0 to 75 mm by region.',
  },
]

export const FOOTING: readonly Question[] = [
  { key: 'wall.footing.depth', label: 'Trench depth', unset: 'no footing' },
  { key: 'wall.footing.outset', label: 'Outset', unset: '0 m', help: 'Beyond the face, each side.' },
  { key: 'wall.footing.dug', label: 'The trench is open already', kind: 'switch' },
]
