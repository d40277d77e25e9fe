// The only file that speaks to Rust. One function for each command.
import { Channel, invoke } from '@tauri-apps/api/core'
import type {
  AnswersChecked, BeginChoices, CountedHome, DocumentName, Dropped, Keeping, KitListPreview, KitStore, LessonChange,
  LessonDraft, LessonKept, LessonShelf, LotTyped, PaceBook, PacePreview, PagePreview, PagesAsked, PaperEnd, PaperSheets,
  Printed, Printing, Readiness, Reason, Renewed, ReturnTyped, RosterPreview, RuleKey, Sketch, Term, Trouble, View, YourCourses,
} from './bindings'
import { Renewal } from './renewal'

export type Reply<T> = { ok: true; value: T } | { ok: false; trouble: Trouble }

/** The view that those are told against which tell only what is other. */
const renewal = new Renewal()

/** The course named on the command line, or the example. */
export const start = () => call<View>('start')
/** Nothing when the person thought better of it. */
export const open = () => call<View | null>('open')
export const yourCourses = () => call<YourCourses>('your_courses')
export const courseReadiness = (path: string) => call<Readiness>('course_readiness', { path })
/** Its file stays. */
export const forgetCourse = (path: string) => call<YourCourses>('forget_course', { path })
export const openCourse = (path: string) => call<View | null>('open_course', { path })
export const openExample = (name: string) => call<View | null>('open_example', { name })
/** `zone`: that of this machine. */
export const beginChoices = (zone: string) => call<BeginChoices>('begin_choices', { zone })
/** By the key of the course file that each answer becomes. */
export const checkAnswers = (answers: Record<string, string>) => call<AnswersChecked>('check_answers', { answers })
export const beginCourse = (answers: Record<string, string>) => call<View | null>('begin_course', { answers })
/** The same course from another first day on, as `2028-04-22`. */
export const courseAgain = (path: string, first: string) => call<View | null>('course_again', { path, first })
/** One key of the course file; refused: nothing has changed. */
export const edit = async (key: string, text: string, goesOn: boolean) =>
  renewal.taken(await call<Renewed>('edit', { key, text, goesOn, known: renewal.known }))
/** What could be done otherwise, which no edit waits for. */
export const advise = async () => renewal.taken(await call<Renewed>('advise', { known: renewal.known }))
/** From now on views hold this drawing, if any; the others are empty. */
export const lookAt = async (drawing: string | null) => renewal.taken(await call<Renewed>('look_at', { drawing, known: renewal.known }))
export const addDay = () => call<View>('add_day')
export const removeDay = () => call<View>('remove_day')
export const addBreak = (day: number) => call<View>('add_break', { day })
export const removeBreak = (day: number, at: number) => call<View>('remove_break', { day, at })
export const addStretch = (bent: boolean) => call<View>('add_stretch', { bent })
export const addSurvey = () => call<View>('add_survey')
export const removeRow = (key: 'line' | 'ground', at: number) => call<View>('remove_row', { key, at })
export const mark = (id: string, done: boolean) => call<View>('mark', { id, done })
export const addVehicle = () => call<View>('add_vehicle')
export const removeVehicle = (at: number) => call<View>('remove_vehicle', { at })
export const changeRule = (item: string, keys: RuleKey[], forGood: boolean) =>
  call<View>('change_rule', { item, keys, forGood })
export const takeBackRule = (item: string, forGood: boolean) => call<View>('take_back_rule', { item, forGood })
export const kitStore = () => call<KitStore>('kit_store')
/** In place of the lot of this item and owner; beside the others where there was none. */
export const putLot = (was: [item: string, owner: string] | null, lot: LotTyped) => call<View>('put_lot', { was, lot })
export const removeLot = (item: string, owner: string) => call<View>('remove_lot', { item, owner })
export const bookKit = () => call<View>('book_kit')
export const releaseKit = () => call<View>('release_kit')
export const kitHome = (returns: ReturnTyped[]) => call<CountedHome>('kit_home', { returns })
export const kitNotHome = () => call<View>('kit_not_home')
/** What taking in the chosen list would change; nothing when the person thought better of it. */
export const lookAtKitList = () => call<KitListPreview | null>('look_at_kit_list')
/** Takes in the list that was looked at last; `replace`: and takes out what it does not name. */
export const takeInKitList = (replace: boolean) => call<View>('take_in_kit_list', { replace })
/** The file written; nothing when the person thought better of it. */
export const exportKitList = () => call<string | null>('export_kit_list')
/** The calendar file written; nothing when the person thought better of it. */
export const writeCalendar = () => call<string | null>('write_calendar')
export const addRain = (day: number) => call<View>('add_rain', { day })
export const removeRain = (day: number, at: number) => call<View>('remove_rain', { day, at })
/** First thing that day without a time; where it falls by itself without a day. Days count from 0. */
export const wish = (lesson: string, day: number | null, time: string) => call<View>('wish', { lesson, day, time })
export const addAbsence = () => call<View>('add_absence')
export const removeAbsence = (at: number) => call<View>('remove_absence', { at })
/** How far a stage has come, in all bays where none is named. Days and bays count from 0. */
export type Told = { day: number; time: string; stage: string; bay: number | null; done: string }
export const tell = (told: Told) => call<View>('tell', told)
export const untell = (at: number) => call<View>('untell', { at })
/** `tell` hears of what is dropped onto the window. */
export const hearOfDrops = (tell: (dropped: Dropped) => void) =>
  call<null>('hear_of_drops', { told: new Channel<Dropped>(tell) })
/** The course that was dropped last; nothing when the person thought better of it. */
export const openDropped = () => call<View | null>('open_dropped')
/** What taking in a list of people would change. */
export const lookAtRoster = (pasted: string) => call<RosterPreview>('look_at_roster', { pasted })
/** `whole`: who is not in it goes. */
export const takeInRoster = (pasted: string, whole: boolean) => call<View>('take_in_roster', { pasted, whole })
export const lessonShelf = () => call<LessonShelf>('lesson_shelf')
export const lesson = (id: string) => call<LessonDraft>('lesson', { id })
export const newLesson = (title: string) => call<LessonDraft>('new_lesson', { title })
/** A lesson with one part as it was typed; nothing is saved. */
export const changeLesson = (id: string, text: string, change: LessonChange) =>
  call<LessonDraft>('change_lesson', { id, text, change })
/** A page of a lesson as it is written now; nothing while it is not sound. */
export const previewLesson = (id: string, text: string, document: string, page: number) =>
  call<PagePreview | null>('preview_lesson', { id, text, document, page })
export const saveLesson = (id: string, text: string) => call<LessonKept>('save_lesson', { id, text })
export const takeLessonAway = (id: string, text: string) => call<LessonKept>('take_lesson_away', { id, text })
/** The lines of the load list that are ticked. */
export const ticks = () => call<string[]>('ticks')
export const keepTicks = (ticked: readonly string[]) => call<null>('keep_ticks', { ticked })
export const paceBook = () => call<PaceBook>('pace_book')
export const recordPace = () => call<PaceBook>('record_pace')
export const takeBackPace = () => call<PaceBook>('take_back_pace')
/** A course of the book, by its place in it. */
export const takeBackPaceOf = (at: number) => call<PaceBook>('take_back_pace_of', { at })
/** What taking in a pace book would change; nothing where the person thought better of it. */
export const lookAtPaceFile = () => call<PacePreview | null>('look_at_pace_file')
export const takeInPaceFile = () => call<PaceBook>('take_in_pace_file')
export const exportPaceBook = () => call<string | null>('export_pace_book')
export const undo = async () => renewal.taken(await call<Renewed>('undo', { known: renewal.known }))
export const redo = async () => renewal.taken(await call<Renewed>('redo', { known: renewal.known }))
export const save = () => call<View | null>('save')
export const saveAs = () => call<View | null>('save_as')
/** `tell` hears how things stand, now and whenever that changes. */
export const keeping = (tell: (now: Keeping) => void) =>
  call<null>('keeping', { told: new Channel<Keeping>(tell) })
/** Nothing when the person would rather not leave what lies on the desk. */
export const takeKept = (id: string) => call<View | null>('take_kept', { id })
export const leaveKept = (id: string) => call<null>('leave_kept', { id })
export const readAnew = () => call<View>('read_anew')
export const keepMine = () => call<View>('keep_mine')
/** Over what another program has written, as far as that was told. */
export const saveOver = () => call<View>('save_over')
export const documents = () => call<DocumentName[]>('documents')
/** Pages count from 1; beyond the last it is the last. */
export const previewPage = (document: string, page: number, asked: PagesAsked) =>
  call<PagePreview>('preview_page', { document, page, asked })
/** Pages have been out of sight for a while. */
export const leavePages = () => call<null>('leave_pages')
/** Nothing while no folder has been chosen. */
export const printFolder = () => call<string | null>('print_folder')
export const choosePrintFolder = () => call<string | null>('choose_print_folder')
/** `tell` hears of each document before it is set. */
export const print = (names: string[], asked: PagesAsked, tell: (printing: Printing) => void) =>
  call<Printed>('print', { names, asked, told: new Channel<Printing>(tell) })
/** Ends a print after the document that is being set. */
export const stopPrint = () => call<null>('stop_print')
/** Every page for a printer; nothing if it was stopped. `tell` as for `print`. */
export const paperSheets = (names: string[], asked: PagesAsked, tell: (printing: Printing) => void) =>
  call<PaperSheets | null>('paper_sheets', { names, asked, told: new Channel<Printing>(tell) })
/** The system asks for a printer, and prints what the window holds ready. */
export const printSheets = (letter: boolean) => call<PaperEnd>('print_sheets', { letter })
export const showPrinted = () => call<null>('show_printed')

/** Why the figures of the open course are what they are. */
export const reasons = () => call<Reason[]>('reasons')
/** The words of the trade. */
export const words = () => call<Term[]>('words')
/** A sketch of the lessons by its name. */
export const sketch = (name: string) => call<Sketch>('sketch', { name })

async function call<T>(command: string, args?: Record<string, unknown>): Promise<Reply<T>> {
  try {
    return { ok: true, value: await invoke<T>(command, args) }
  } catch (thrown) {
    return { ok: false, trouble: isTrouble(thrown) ? thrown : ours(command, thrown) }
  }
}

function isTrouble(thrown: unknown): thrown is Trouble {
  return typeof thrown === 'object' && thrown !== null && 'what' in thrown && 'cure' in thrown
}

/** What no command should throw: not the person's fault, and said so. */
function ours(command: string, thrown: unknown): Trouble {
  return {
    code: 'our-fault',
    key: '',
    what: `this is a fault in Coursewright, not in your course (${command}: ${String(thrown)})`,
    cure: 'save the course under another name, then start Coursewright again',
  }
}
