// What is told beside the work when a course might be lost, and what may be answered. Calm: one
// question at a time of each sort, most pressing first.
import type { Keeping, Kept, Trouble } from '../bindings'
import { nameOf } from './changes'

export type Answer =
  | 'take' | 'leave' | 'leaveForGood' | 'stay' | 'readAnew' | 'keepMine' | 'overwrite' | 'dontSave' | 'save' | 'saveAs' | 'putAway'

export type Note = {
  id: string
  /** What has happened, in one sentence. */
  what: string
  /** What it means and what may be done. */
  about: string
  /** The first is what most people want. */
  answers: readonly (readonly [answer: Answer, words: string])[]
  /** Asked because of something just done: it takes the focus. */
  pressing?: boolean
  kept?: Kept
}

/** Another program's changes would be overwritten, or another window is the one that saves. */
export type Asks = 'overwrite' | 'elsewhere' | undefined

export type Standing = {
  now: Keeping
  /** The name of the open file. */
  file: string
  unsaved: boolean
  /** Why the last save waits for an answer. */
  asks: Asks
  /** The kept changes that are about to be let go for good. */
  leaving: string | undefined
  /** Troubles that were put away. */
  away: readonly Trouble[]
}

export function notes(standing: Standing): Note[] {
  const { now, asks, away } = standing
  const broken = now.broken.filter((it) => !away.some((put) => put.what === it.what && put.cure === it.cure))
  return [
    ...(asks === 'overwrite' ? [question(standing)] : outside(standing)),
    ...(now.elsewhere ? [elsewhere(standing)] : []),
    ...now.kept.slice(0, 1).map((kept) => keptNote(kept, standing)),
    ...broken.slice(0, 1).map(brokenNote),
  ]
}

const question = ({ file }: Standing): Note => ({
  id: 'overwrite',
  what: `Overwrite what another program has written in ${file}?`,
  about: 'What it wrote is lost then.',
  answers: [['overwrite', 'Overwrite it'], ['saveAs', 'Save under another name'], ['dontSave', "Don't save"]],
  pressing: true,
})

function outside({ now, file, unsaved }: Standing): Note[] {
  if (now.outside === 'changed') {
    const here = unsaved ? 'Your own changes are still here, not saved.' : 'What you see is the course as it was before.'
    return [{
      id: 'changed',
      what: `${file} has been changed by another program.`,
      about: `${here} Reading it anew can be undone.`,
      answers: [['readAnew', 'Read it anew'], ['keepMine', 'Keep mine'], ['saveAs', 'Save under another name']],
    }]
  }
  if (now.outside === 'mine') {
    return [{
      id: 'mine',
      what: `You keep your own; ${file} on the disk is still what another program wrote.`,
      about: 'Saving will ask before it overwrites that.',
      answers: [['readAnew', 'Read it anew'], ['saveAs', 'Save under another name']],
    }]
  }
  if (now.outside === 'gone') {
    return [{
      id: 'gone',
      what: `${file} is no longer where it was.`,
      about: 'It was deleted or moved, or its drive is not there. The course is still open; saving writes the file anew.',
      answers: [['save', 'Save it there again'], ['saveAs', 'Save under another name']],
    }]
  }
  return []
}

const elsewhere = ({ file, asks }: Standing): Note => ({
  id: 'elsewhere',
  what: `${file} is open in another window too, and only that one saves it.`,
  about: 'Here you can look and try things out; to keep them, save under another name or close the other window.',
  answers: [['saveAs', 'Save under another name']],
  pressing: asks === 'elsewhere',
})

function keptNote(kept: Kept, { now, leaving }: Standing): Note {
  const name = kept.file || `${kept.title || 'a new course'}, which never had a file,`
  const more = now.kept.length - 1
  const parts = [
    `They are: ${nameOf(kept.changes)}.`,
    kept.since ? 'The file itself has been changed or deleted since; nothing is overwritten without asking.' : '',
    kept.here || !kept.file ? '' : `Taking them opens that course, in ${kept.folder}.`,
    more > 0 ? `${more} more to decide after this.` : '',
  ]
  const note = { id: 'kept', kept, what: `Your last changes to ${name} of ${kept.when} were not saved.` }
  if (leaving === kept.id) {
    return {
      ...note,
      about: 'Leave them for good? They are lost then.',
      answers: [['stay', 'No, not yet'], ['leaveForGood', 'Leave them for good']],
    }
  }
  return { ...note, about: parts.filter(Boolean).join(' '), answers: [['take', 'Take them'], ['leave', 'Leave them']] }
}

const brokenNote = ({ code, what, cure }: Trouble): Note => ({
  id: code,
  what,
  about: cure,
  answers: [['putAway', 'Put away']],
})
