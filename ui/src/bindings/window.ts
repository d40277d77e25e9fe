// What the desktop program and its window say to each other.
// Generated from the shapes in Rust by `cargo xtask bindings`. Do not edit.

import type { Entry, Member, StageWork, WishUnmet } from './plan'
import type { Written, WrittenBookRow } from './written'
export type View = { 
/**
 * The file's name, or a word for a course not yet saved.
 */
file: string, 
/**
 * Whether the file on the disk is older than what is shown.
 */
unsaved: boolean, 
/**
 * What undoing would take back; null when there is nothing to undo.
 */
undo: Array<Changed> | null, 
/**
 * What redoing would do again; null when nothing was undone.
 */
redo: Array<Changed> | null, 
/**
 * Whether what could be done otherwise has been worked out: what would make the wall longer,
 * the curve of chance, what would help on the day.
 */
advised: boolean, 
/**
 * The date on this machine, as `2027-04-24`: what is due before it is late.
 */
today: string, 
/**
 * Every value of the course file as typed, by key.
 */
values: { [key in string]: string }, 
/**
 * What of the instructor's own lessons, tables and templates can't be used; the built-in
 * ones count.
 */
own: Array<Trouble>, 
/**
 * Whether students are named one by one.
 */
roster: boolean, 
/**
 * The students' names in their order: whose pages may be chosen.
 */
students: Array<string>, 
/**
 * What the tables offer to choose from.
 */
choices: Choices, 
/**
 * The kit rules as they hold for this course.
 */
rules: Array<Rule>, 
/**
 * The plan's numbers it goes by.
 */
plan: Numbers, 
/**
 * The same as a person reads it.
 */
written: Written, 
/**
 * The drawings.
 */
drawings: Drawings, 
/**
 * What can be taken hold of in them.
 */
handles: Handles, 
/**
 * What the last change moved, as `stone 12.4 t -> 13.9 t`.
 */
moved: Array<Moved>, };

export type Renewed = { 
/**
 * The number of the view that comes of it.
 */
number: number, 
/**
 * The view; null where it is the one before with some changes.
 */
whole: View | null, 
/**
 * These changes.
 */
changes: Array<Difference>, };

export type Difference = { 
/**
 * Where it is: the name of a field or the place in a list, from outside to inside.
 */
at: Array<string>, 
/**
 * What is there now.
 */
now: unknown, };

export type Numbers = { 
/**
 * How many students.
 */
students: number, 
/**
 * Who builds each stint.
 */
stints: Array<Array<Member>>, 
/**
 * The bays that progress is told by.
 */
bays: number, 
/**
 * The stages there is work for.
 */
stages: Array<StageWork>, 
/**
 * Those the course itself builds, by their ids and in their order.
 */
building: Array<string>, 
/**
 * The days.
 */
timetable: Array<Entry>, 
/**
 * Wishes that can't be had.
 */
unmet: Array<WishUnmet>, };

export type Choices = { rocks: Array<[string, string]>, bars: Array<[string, string]>, 
/**
 * What a kit rule counts by.
 */
pers: Array<string>, lessons: Array<LessonChoice>, 
/**
 * Stages that can be done before the course.
 */
beforehand: Array<[string, string]>, 
/**
 * Kinds of question on a worksheet, in their order there.
 */
questions: Array<[string, string]>, };

export type LessonChoice = { 
/**
 * The word of the course file.
 */
id: string, 
/**
 * What a person reads.
 */
title: string, 
/**
 * It is taught on a course like this without being asked for.
 */
fits: boolean, 
/**
 * This course teaches it.
 */
taught: boolean, 
/**
 * Why it is taught, or why not: `on every course`, `only where the line bends`.
 */
why: string, };

export type Drawings = { section: string, elevation: string, line_plan: string, setting_out: string, frame: string, gauge: string, heap_plan: string, timetable: string, 
/**
 * Null where only one length was asked.
 */
chance_curve: string | null, 
/**
 * Null before anything was told.
 */
progress: string | null, };

export type Handles = { section: Array<Handle>, elevation: Array<Handle>, timetable: DayHandles, };

export type Handle = { 
/**
 * What tells it from the other handles.
 */
id: string, 
/**
 * The key it sets.
 */
key: string, 
/**
 * What it is called: `Height of the wall`.
 */
name: string, 
/**
 * It moves to the left and to the right; otherwise up and down.
 */
across: boolean, 
/**
 * Where it is: to the right, and down.
 */
at: [number, number], 
/**
 * A place that stays where it is while this handle moves.
 */
fixed: [number, number], 
/**
 * Millimetres of the drawing for a metre along its way: how large the drawing is.
 */
mm_per_m: number, 
/**
 * Where it can be moved to, from left to right or from below upwards.
 */
stops: Array<HandleStop>, 
/**
 * Which of them it is at.
 */
now: number, };

export type HandleStop = { 
/**
 * What a person would type for it.
 */
typed: string, 
/**
 * What a person would call it.
 */
words: string, 
/**
 * Where it lies along the way the handle moves.
 */
place: number, };

export type DayHandles = { 
/**
 * The rows of the days, in order.
 */
days: Array<DayPlaces>, 
/**
 * What can be moved in them: each lesson, each break of the file.
 */
entries: Array<DayEntry>, };

export type DayPlaces = { 
/**
 * `Day 1`.
 */
name: string, 
/**
 * Its upper edge.
 */
top: number, 
/**
 * Its lower edge.
 */
bottom: number, 
/**
 * The quarters of an hour from its beginning to its end, from left to right.
 */
times: Array<HandleStop>, };

export type DayEntry = { 
/**
 * What tells it from the others.
 */
id: string, 
/**
 * What it is called.
 */
name: string, 
/**
 * The lesson that is wished elsewhere; null for a break.
 */
lesson: string | null, 
/**
 * The key of a break's beginning; a break stays on its day. Null for a lesson.
 */
key: string | null, 
/**
 * Its day, counted from 0.
 */
day: number, 
/**
 * Where it begins.
 */
from: number, 
/**
 * Where it ends.
 */
to: number, 
/**
 * When it begins, as it is typed: `10:30`.
 */
typed: string, 
/**
 * The same as it is said.
 */
words: string, };

export type Changed = { 
/**
 * Its key, as `wall.height`.
 */
key: string, 
/**
 * What it was; null for one that was not there.
 */
from: string | null, 
/**
 * What it is; null for one that is no longer there.
 */
to: string | null, };

export type Moved = { what: string, before: string, after: string, };

export type Trouble = { 
/**
 * A fixed word; the window may branch on this, never on a sentence.
 */
code: string, 
/**
 * The key of the course file it is about; empty if it is about none.
 */
key: string, 
/**
 * What is wrong.
 */
what: string, 
/**
 * What would be right.
 */
cure: string, };

export type Keeping = { 
/**
 * Changes of earlier sittings that were never saved; nothing of them is on the desk.
 */
kept: Array<Kept>, 
/**
 * Where the file on the disk stands against what is shown.
 */
outside: Outside, 
/**
 * The file is open in another window, and only that one saves to it.
 */
elsewhere: boolean, 
/**
 * What can't be kept safe, or could not be read of what was.
 */
broken: Array<Trouble>, };

export type Kept = { 
/**
 * By what they are taken or left.
 */
id: string, 
/**
 * The course's title.
 */
title: string, 
/**
 * The file's name; empty for a course that was never saved.
 */
file: string, 
/**
 * The folder it is in; empty for a course that was never saved.
 */
folder: string, 
/**
 * When the last of them was made, as `14:32` or `Sat 24 April 2027, 14:32`.
 */
when: string, 
/**
 * What they are, against what the disk holds.
 */
changes: Array<Changed>, 
/**
 * They belong to the course that is open.
 */
here: boolean, 
/**
 * The file itself has been changed or deleted since.
 */
since: boolean, };

export type Outside = "same" | "changed" | "mine" | "gone";

export type DocumentName = { 
/**
 * Its file's name without the ending.
 */
name: string, 
/**
 * What a person reads.
 */
title: string, 
/**
 * What it is for.
 */
what: string, 
/**
 * It holds what students have said in confidence.
 */
private: boolean, 
/**
 * It belongs among the pages of this course: it begins ticked.
 */
wanted: boolean, };

export type PagesAsked = { 
/**
 * 18 point and set anew.
 */
large_print: boolean, 
/**
 * Whose own pages, as places in the group from 0; null for everybody's.
 */
students: Array<number> | null, };

export type PagePreview = { 
/**
 * The page. A part of it with the `data-place` `wall` leads to the questions it rests on.
 */
svg: string, 
/**
 * The places its parts lead to, each once, in the order of the page.
 */
places: Array<string>, 
/**
 * Which page it is, from 1.
 */
page: number, 
/**
 * How many the document has.
 */
pages: number, 
/**
 * Only the piece of the document that the page belongs to was set, while somebody types: how
 * many pages the others have is from before.
 */
alone: boolean, 
/**
 * What of the instructor's own could not be used.
 */
own: Array<Trouble>, };

export type Printing = { 
/**
 * Which document is being set, from 1.
 */
at: number, 
/**
 * How many are to be printed.
 */
of: number, 
/**
 * Its title.
 */
title: string, 
/**
 * How many pages the documents before it have together.
 */
pages: number, 
/**
 * How many of them are the last one's; 0 before the first.
 */
last: number, };

export type Printed = { 
/**
 * The folder they are in.
 */
folder: string, 
/**
 * Their files' names.
 */
files: Array<string>, 
/**
 * How many pages are in them.
 */
pages: number, 
/**
 * How many were left when the print was stopped; 0 if all are there.
 */
left: number, 
/**
 * Characters that no bundled font holds, if any; a sign stands in their place.
 */
unprintable: string, 
/**
 * What of the instructor's own could not be used.
 */
own: Array<Trouble>, };

export type PaperSheet = { 
/**
 * The page, upright as it is read.
 */
svg: string, 
/**
 * How wide it is on the paper, in points; a page larger than the paper is made to fit.
 */
width_pt: number, 
/**
 * How high, in points.
 */
height_pt: number, 
/**
 * It lies sideways on the paper, because it is wider than high.
 */
sideways: boolean, };

export type PaperSheets = { 
/**
 * In the order in which they come out of the printer.
 */
sheets: Array<PaperSheet>, 
/**
 * The paper is US Letter; A4 otherwise.
 */
letter: boolean, 
/**
 * Characters that no bundled font holds, if any; a sign stands in their place.
 */
unprintable: string, 
/**
 * What of the instructor's own could not be used.
 */
own: Array<Trouble>, };

export type PaperEnd = "sent" | "not-sent" | "asking";

export type Rule = { 
/**
 * The tool.
 */
item: string, 
/**
 * What it is counted in; empty for pieces.
 */
unit: string, 
/**
 * What it is counted by, as the file writes it.
 */
per: string, 
/**
 * How many people share one; empty where it is not counted so.
 */
every: string, 
/**
 * So many to each, as typed; by heat three figures with commas.
 */
each: string, 
/**
 * Share carried beyond the need.
 */
spare: string, 
/**
 * The smallest number worth carrying.
 */
least: string, 
/**
 * It counts for nothing.
 */
off: boolean, 
/**
 * Who says so; that it was changed, where it was.
 */
source: string, 
/**
 * Whether this course changes it.
 */
changed_here: boolean, 
/**
 * Whether the instructor has changed it for good.
 */
changed_for_good: boolean, };

export type RuleKey = { key: string, typed: string, };

export type KitStore = { 
/**
 * Where it lives.
 */
folder: string, 
/**
 * Why it can only be read; empty if it can be changed.
 */
notice: string, 
/**
 * What there is, by item and owner.
 */
lots: Array<Lot>, 
/**
 * All courses that have booked, by date.
 */
courses: Array<BookedCourse>, 
/**
 * Each a sentence that names item, date and courses.
 */
clashes: Array<string>, 
/**
 * `open` if nothing is booked for this course, `booked`, `home` once it was counted in.
 */
stands: string, 
/**
 * What this course has booked, in the order of its load list.
 */
booked: Array<BookedItem>, };

export type Lot = { item: string, 
/**
 * Empty for pieces.
 */
unit: string, 
/**
 * Empty for the instructor's own.
 */
owner: string, good: number, care: number, broken: number, 
/**
 * Of one, with its unit; empty if it is not known.
 */
mass: string, note: string, };

export type BookedCourse = { title: string, file: string, days: string, items: number, 
/**
 * When its kit came home; empty while it is booked.
 */
home: string, 
/**
 * It is the course that is open.
 */
this: boolean, };

export type BookedItem = { item: string, count: number, };

export type LotTyped = { item: string, unit: string, owner: string, good: string, care: string, broken: string, mass: string, note: string, };

export type ReturnTyped = { item: string, back: string, care: string, broken: string, used_up: string, lost: string, };

export type CountedHome = { 
/**
 * The course after it.
 */
view: View, 
/**
 * Booked and not counted: they stay in the store as they were.
 */
uncounted: Array<BookedItem>, 
/**
 * Said to need care, to be broken, used up or lost, beyond what the store holds.
 */
not_in_store: Array<BookedItem>, };

export type KitListPreview = { 
/**
 * The file's name.
 */
file: string, 
/**
 * New lots, in words.
 */
added: Array<string>, 
/**
 * Lots that would be different, in words.
 */
changed: Array<string>, 
/**
 * How many are there just so.
 */
same: number, 
/**
 * Lots the file does not name, in words.
 */
not_in_file: Array<string>, };

export type Dropped = { "kind": "course" } | { "kind": "kit-list", "is": KitListPreview } | { "kind": "pace-book", "is": PacePreview } | { "kind": "roster", "is": string } | { "kind": "refused", "is": Trouble };

export type RosterPreview = { 
/**
 * Who is new.
 */
added: Array<string>, 
/**
 * Whose experience would be another.
 */
changed: Array<string>, 
/**
 * How many are there just so.
 */
same: number, 
/**
 * Who is in the course and not in the list.
 */
not_in_list: Array<string>, };

export type LessonShelf = { 
/**
 * In the order they would be taught in.
 */
lessons: Array<ShelfLesson>, 
/**
 * What a lesson can come before: word and name.
 */
stages: Array<[string, string]>, 
/**
 * When a lesson is taught: word and name.
 */
conditions: Array<[string, string]>, 
/**
 * The cautions that can go with a lesson: word and sentence.
 */
cautions: Array<[string, string]>, 
/**
 * Drawings of the course and sketches, by name.
 */
drawings: Array<string>, 
/**
 * Figures of the course that a text can name in braces.
 */
figures: Array<string>, 
/**
 * Where the instructor's own lessons lie.
 */
folder: string, };

export type ShelfLesson = { 
/**
 * Its file's name without the ending.
 */
id: string, 
/**
 * What a person reads.
 */
title: string, 
/**
 * When it is given; empty for one that can't be used.
 */
before: string, 
/**
 * How long it lasts; empty for one that can't be used.
 */
lasts: string, 
/**
 * `built-in`, `own`, or `replaces` for one's own in place of a built-in one.
 */
whose: string, 
/**
 * This course teaches it.
 */
taught: boolean, 
/**
 * Why it is taught, or why not.
 */
why: string, 
/**
 * What is wrong with the instructor's own; empty if it is sound.
 */
fault: string, };

export type LessonDraft = { 
/**
 * Its file's name without the ending.
 */
id: string, 
/**
 * The whole file.
 */
text: string, 
/**
 * Its parts; null where its head can't be read, so that it is mended as a whole.
 */
parts: LessonParts | null, 
/**
 * What keeps it from being used; null if it is sound.
 */
fault: LessonFault | null, 
/**
 * `built-in`, `own`, `replaces`, or `new` for one that is not on the shelf.
 */
whose: string, 
/**
 * It stands on the shelf just so.
 */
saved: boolean, 
/**
 * It has a handout: what opens every later day is only said.
 */
handout: boolean, };

export type LessonParts = { title: string, kind: string, minutes: string, before: string, when: Array<string>, drawings: Array<string>, aims: Array<string>, show: Array<string>, kit: Array<string>, hazards: Array<string>, mistakes: Array<string>, 
/**
 * What is asked and what is right.
 */
questions: Array<[string, string]>, body: string, };

export type LessonFault = { 
/**
 * The part it lies in: a key of the head, `body`, or empty for the whole.
 */
part: string, 
/**
 * The line, counted from 1: of the text in the body, of the file elsewhere.
 */
line: number, 
/**
 * What is wrong.
 */
what: string, 
/**
 * What would be right; empty if that is plain.
 */
cure: string, };

export type LessonChange = { "part": "word", "typed": [string, string] } | { "part": "lines", "typed": [string, Array<string>] } | { "part": "questions", "typed": Array<[string, string]> } | { "part": "body", "typed": string } | { "part": "whole", "typed": string };

export type LessonKept = { 
/**
 * The lesson as it is written.
 */
draft: LessonDraft, 
/**
 * The shelf.
 */
shelf: LessonShelf, 
/**
 * The course.
 */
view: View, };

export type PaceBook = { 
/**
 * Why it can only be read; empty if it can be changed.
 */
notice: string, 
/**
 * The open course stands in it.
 */
recorded: boolean, 
/**
 * More or other things have been told since it was recorded.
 */
changed: boolean, 
/**
 * How long the stages of the open course took, as far as was told.
 */
record: Array<PaceRow>, 
/**
 * All courses that stand in it, by date.
 */
courses: Array<PaceCourse>, 
/**
 * The pace table before all of them and after; nothing while the book is empty.
 */
rates: Array<WrittenBookRow>, };

export type PaceRow = { 
/**
 * The stage's name.
 */
stage: string, 
/**
 * How long so much of it usually takes.
 */
usual: string, 
/**
 * How long it took.
 */
taken: string, 
/**
 * The two compared: `20 % longer`, `as usual`.
 */
pace: string, };

export type PaceCourse = { title: string, first_day: string, recorded_on: string, 
/**
 * How many stages were recorded.
 */
stages: number, 
/**
 * It is the course that is open.
 */
this: boolean, };

export type PacePreview = { 
/**
 * The file's name.
 */
file: string, 
/**
 * Courses that the book does not have.
 */
added: Array<string>, 
/**
 * Courses that would be recorded otherwise.
 */
changed: Array<string>, 
/**
 * How many are in the book just so.
 */
same: number, 
/**
 * Courses that the file does not have; they stay.
 */
not_in_file: Array<string>, };

export type YourCourses = { 
/**
 * Nothing of the person's own lies on the desk yet.
 */
start_here: boolean, 
/**
 * Newest first.
 */
recent: Array<RecentCourse>, 
/**
 * What came with the program.
 */
examples: Array<ExampleCourse>, 
/**
 * What became of a list that could not be read; empty if it could.
 */
notice: string, };

export type RecentCourse = { 
/**
 * Its file, as the list knows it.
 */
path: string, 
/**
 * The file's name.
 */
file: string, 
/**
 * The folder it lies in.
 */
folder: string, 
/**
 * What it is called.
 */
title: string, 
/**
 * Where it is held.
 */
place: string, 
/**
 * All its dates in short.
 */
dates: string, 
/**
 * The first day that is offered for the same course again, as `2028-04-22`.
 */
again: string, 
/**
 * It lies on the desk.
 */
open: boolean, 
/**
 * Why it can't be opened; null if it can.
 */
trouble: Trouble | null, };

export type ExampleCourse = { 
/**
 * The word by which it is opened.
 */
name: string, 
/**
 * What it is called.
 */
title: string, 
/**
 * What it shows.
 */
about: string, };

export type Readiness = { 
/**
 * `3 to do, 1 late`, `nothing left to do`, `over`.
 */
words: string, 
/**
 * Something should have been done by now.
 */
late: boolean, };

export type BeginChoices = { 
/**
 * By the key of the course file that it becomes.
 */
usual: { [key in string]: string }, 
/**
 * Countries whose emergency number is known.
 */
countries: Array<CountryChoice>, 
/**
 * Every time zone.
 */
zones: Array<string>, 
/**
 * Kinds of stone: the word of the course file, and what a person reads.
 */
rocks: Array<[string, string]>, };

export type CountryChoice = { 
/**
 * Two letters.
 */
code: string, 
/**
 * What a person reads.
 */
name: string, 
/**
 * The units it builds in.
 */
units: string, 
/**
 * Whether its courses have American spelling, dates and times.
 */
american: boolean, 
/**
 * Its time zones, the usual one first.
 */
zones: Array<string>, };

export type AnswersChecked = { 
/**
 * What can't be, each at its key.
 */
troubles: Array<Trouble>, 
/**
 * The course they make; null while something can't be.
 */
comes_to: ComesTo | null, };

export type ComesTo = { dates: string, group: string, length: string, 
/**
 * Why it is that long.
 */
reason: string, height: string, chance: string, stone: string, frames: number, 
/**
 * What to mind in this plan.
 */
to_mind: Array<string>, };

export type Term = { 
/**
 * The word.
 */
word: string, 
/**
 * Other words for the same thing.
 */
also: Array<string>, 
/**
 * What it means.
 */
meaning: string, 
/**
 * A sketch, or a drawing of the course, by its name; null where a drawing would not help.
 */
drawing: string | null, 
/**
 * It is a word of everyday speech as well: only the other words are marked in texts.
 */
everyday: boolean, 
/**
 * Who says so.
 */
source: string, };

export type Sketch = { 
/**
 * The sketch as SVG.
 */
svg: string, 
/**
 * What it shows, for who can't see it.
 */
words: string, 
/**
 * It is a drawing of the open course, which changes with it.
 */
of_the_course: boolean, };
