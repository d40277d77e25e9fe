// What the fields of the window are called, by their keys in the course file.
import type { Question } from './field'
import * as frames from '../frames/questions'
import * as group from '../group/questions'
import * as line from '../line/questions'
import * as money from '../money/questions'
import * as stone from '../stone/questions'
import * as venue from '../venue/questions'
import * as wall from '../wall/questions'

const isQuestion = (it: unknown): it is Question => typeof it === 'object' && it !== null && 'key' in it && 'label' in it

const asked = [frames, group, line, money, stone, venue, wall]
  .flatMap((place) => Object.values(place))
  .flatMap((it) => (Array.isArray(it) ? it.filter(isQuestion) : []))
export const LABELS: ReadonlyMap<string, string> = new Map([...asked, ...wall.section(true), ...wall.section(false)].map(({ key, label }) => [key, label]))
