// A plan as a person reads it.
// Generated from the shapes in Rust by `cargo xtask bindings`. Do not edit.

export type Written = { 
/**
 * What the course is called.
 */
title: string, 
/**
 * The place's name.
 */
venue: string, 
/**
 * All its dates in short.
 */
dates: string, 
/**
 * `8 students in 4 pairs, 1 instructor, 1 assistant`.
 */
group: string, 
/**
 * The wall.
 */
wall: WrittenWall, 
/**
 * Its setting-out.
 */
frames: WrittenFrames, 
/**
 * Null where the frames are of bars.
 */
timber: WrittenTimber | null, 
/**
 * Null where the wall stands free.
 */
retaining: WrittenRetaining | null, 
/**
 * Its stone.
 */
stone: WrittenStone, 
/**
 * What goes with the heap plan.
 */
heaps: WrittenHeaps, 
/**
 * What of it is ordered, and by when; nothing where nothing is lacking.
 */
deliveries: Array<WrittenDelivery>, 
/**
 * What one person may lift.
 */
lifting: WrittenLifting, 
/**
 * The tools.
 */
kit: WrittenKit, 
/**
 * Null where no vehicle is given.
 */
loads: WrittenLoads | null, 
/**
 * Null where the course says nothing of money.
 */
money: WrittenMoney | null, 
/**
 * Who builds where.
 */
stints: Array<WrittenStint>, 
/**
 * The days.
 */
days: Array<WrittenDay>, 
/**
 * The chance of finishing.
 */
chance: WrittenChance, 
/**
 * How the days are run.
 */
running: WrittenRunning, 
/**
 * What to mind.
 */
cautions: Array<WrittenCaution>, 
/**
 * What is not ready.
 */
to_do: Array<WrittenToDo>, };

export type WrittenRunning = { 
/**
 * How often the throughs are reached on the first day; empty without throughs.
 */
throughs: string, 
/**
 * What held the simulated courses up most, the most frequent first.
 */
holdups: Array<WrittenLine>, 
/**
 * What would make the wall longer, the most first.
 */
lifts: Array<WrittenLine>, 
/**
 * Sentences about the wall's length, height and number that an instructor should know.
 */
about_length: Array<string>, 
/**
 * Wishes that can't be had.
 */
unmet: Array<string>, 
/**
 * Weather day by day, where it was typed in.
 */
weather: Array<WrittenDayWeather>, 
/**
 * Who is away when, and who builds where then.
 */
people: Array<WrittenDayPeople>, 
/**
 * Who does what, stage by stage.
 */
rotation: Array<WrittenRound>, 
/**
 * The pace table before and after what was recorded.
 */
book: Array<WrittenBookRow>, 
/**
 * How it stands on the day; null before anything has been built.
 */
today: WrittenToday | null, };

export type WrittenLine = { what: string, figure: string, };

export type WrittenDayWeather = { 
/**
 * Counts from 1.
 */
day: number, 
/**
 * Heat index and wind chill with their bands; empty where nothing was typed in.
 */
figures: Array<string>, 
/**
 * What it asks for, the most pressing first.
 */
asks: Array<string>, };

export type WrittenDayPeople = { 
/**
 * Counts from 1.
 */
day: number, 
/**
 * Who is away, and when.
 */
away: Array<string>, 
/**
 * The stints of that day; none where they are those of the first day.
 */
stints: Array<string>, };

export type WrittenRound = { 
/**
 * The stage's name.
 */
stage: string, 
/**
 * Stint by stint.
 */
places: Array<WrittenPlace>, 
/**
 * Turns at the built ends.
 */
heads: Array<string>, };

export type WrittenPlace = { stint: number, left: string, right: string, };

export type WrittenBookRow = { stage: string, before: string, after: string, 
/**
 * How sure it is, before and after.
 */
spread: string, };

export type WrittenToday = { 
/**
 * `day 1, 11:40`.
 */
now: string, 
/**
 * The chance of finishing from here.
 */
chance: string, 
/**
 * It is below the wish.
 */
below: boolean, 
/**
 * The chance there was before the course.
 */
before: string, 
/**
 * The share of the whole work that is done.
 */
done: string, 
/**
 * The pace so far against the usual one: `35 min behind the usual pace`; empty while nothing
 * has taken any time.
 */
against: string, 
/**
 * The same for each stage that took time: `20 min behind`.
 */
against_by_stage: Array<WrittenLine>, 
/**
 * What was told, in the order of the course file: `day 1, 11:40: "Dig the trench", bay 2,
 * 50 %`.
 */
told: Array<string>, 
/**
 * How far each stage has come, bay by bay.
 */
stages: Array<WrittenStageDone>, 
/**
 * When each stage still to come is done.
 */
by_stage: Array<WrittenStage>, 
/**
 * What would help, the most first.
 */
cures: Array<WrittenLine>, 
/**
 * What the chances with the cures rest on; empty where no cure makes the wall smaller, and
 * where each report says how large the wall was.
 */
assumed: string, 
/**
 * Reports of so much in so little time that they may be slips.
 */
quick: Array<string>, 
/**
 * What makes the wall safe to leave.
 */
safe: Array<string>, 
/**
 * When progress is asked for next; empty when the course is over.
 */
ask_at: string, };

export type WrittenStageDone = { 
/**
 * Its id.
 */
stage: string, 
/**
 * Its name.
 */
name: string, 
/**
 * The share done, bay by bay.
 */
bays: Array<number>, 
/**
 * The same in words: `not begun`, `40 %`, `done`.
 */
shares: Array<string>, 
/**
 * All bays are done.
 */
done: boolean, };

export type WrittenWall = { 
/**
 * `freestanding`, or `holds a bank on the right`.
 */
kind: string, length: string, 
/**
 * `straight, level`, `bent, uneven`.
 */
lie: string, 
/**
 * The line in words; empty for one straight.
 */
line: string, 
/**
 * How the top runs; empty for a level one on level ground.
 */
top: string, ends: Array<WrittenEnd>, height: string, top_width: string, base_width: string, 
/**
 * `1 in 8, both faces`.
 */
batter: string, section_area: string, face_area: string, body_volume: string, 
/**
 * Empty without a footing.
 */
footing_volume: string, footing_depth: string, footing_width: string, footing_outset: string, 
/**
 * Empty without a cope.
 */
cope_height: string, cope_volume: string, 
/**
 * `pace`, `frames` and so on.
 */
binding: string, 
/**
 * A sentence: the length, because of what, and what would change it.
 */
reason: string, limits: Array<WrittenLimit>, };

export type WrittenEnd = { 
/**
 * `station 0` or `far end`.
 */
at: string, 
/**
 * What to do there, in a sentence.
 */
what: string, };

export type WrittenLimit = { 
/**
 * The reason.
 */
limit: string, 
/**
 * `at least` or `at most`.
 */
bound: string, 
/**
 * Where it bites.
 */
length: string, 
/**
 * It decided the length.
 */
binds: boolean, };

export type WrittenTimber = { 
/**
 * `50 x 25 mm`.
 */
batten: string, cut_list: Array<WrittenCutLine>, 
/**
 * `6 of 2.40 m`.
 */
buy: Array<string>, patterns: Array<WrittenPattern>, bought: string, waste: string, 
/**
 * How near to the least possible, as a sentence.
 */
least: string, 
/**
 * Pieces longer than any batten, as a sentence; empty if there are none.
 */
too_long: string, };

export type WrittenCutLine = { 
/**
 * `A`, `B` and so on.
 */
mark: string, what: string, length: string, 
/**
 * `9.5° both ends`, `square`.
 */
ends: string, count: number, 
/**
 * `all`, or the numbers of the frames.
 */
frames: string, };

export type WrittenPattern = { stock: string, times: number, 
/**
 * `2 of A, 1 of C`.
 */
pieces: string, offcut: string, };

export type WrittenRetaining = { 
/**
 * The side the bank lies on, and the side the wall is set out from.
 */
bank: string, front: string, highest: string, from_footing: string, drainage: string, backfill: string, backfill_mass: string, 
/**
 * `58 %`.
 */
base_share: string, 
/**
 * The bank the check reckons with, as name and figure.
 */
reckoned: Array<[string, string]>, 
/**
 * Safety against tipping and against sliding, with the limit they are held against.
 */
overturning: string, sliding: string, limit: string, 
/**
 * Where the resultant meets the base, in words.
 */
resultant: string, 
/**
 * What the check takes for granted.
 */
assumptions: Array<string>, 
/**
 * Whom to ask, and when.
 */
ask: string, must_ask: boolean, 
/**
 * Frame by frame, from the foot of the front face: to the top of it, to the back.
 */
from_front: Array<WrittenFromFront>, };

export type WrittenFromFront = { number: number, 
/**
 * Back to the top edge of the front face: the batter over the rise.
 */
to_top: string, 
/**
 * Back to the foot of the back face.
 */
to_back: string, rise: string, };

export type WrittenFrames = { count: number, sets: number, 
/**
 * Missing; null if nobody has counted.
 */
short: number | null, end_profiles: number, 
/**
 * The longest bay.
 */
bay: string, rows: Array<WrittenFrameRow>, 
/**
 * The ground is not level everywhere, so that levels and rises differ.
 */
sloping: boolean, bays: Array<WrittenBay>, curves: Array<WrittenCurve>, 
/**
 * Null where the frames are of timber.
 */
bars: WrittenBars | null, moves: Array<WrittenMove>, 
/**
 * A sentence: what building in bays does; empty where all frames stand at once.
 */
leapfrog: string, strings: Array<WrittenString>, 
/**
 * The highest string first, as it is read on the frame.
 */
top: string, string: WrittenStringToBring, };

export type WrittenFrameRow = { number: number, station: string, 
/**
 * Level of the ground on the centre line.
 */
ground: string, left_offset: string, right_offset: string, base_width: string, left_rise: string, right_rise: string, 
/**
 * A level board has equal rises here.
 */
level_across: boolean, };

export type WrittenBay = { 
/**
 * The frames it lies between, counted from 1.
 */
from: number, to: number, length: string, left_taped: string, right_taped: string, left_to_right: string, right_to_left: string, 
/**
 * Both diagonals read the same, so that equal ones show a bay set square.
 */
diagonals_alike: boolean, 
/**
 * The longest string of each face with its tails.
 */
left_string: string, right_string: string, };

export type WrittenCurve = { from: string, to: string, radius: string, turn: string, bay: string, left_bow: string, right_bow: string, tolerance: string, spacing_for_tolerance: string, too_far: boolean, };

export type WrittenBars = { count: number, 
/**
 * The stock length chosen; empty if none is long enough.
 */
length: string, needed: string, size: string, mass: string, embedment: string, projection: string, 
/**
 * From the middle of one eye of the board to the middle of the other.
 */
eyes: string, 
/**
 * How wide an eye is.
 */
eye: string, board_length: string, 
/**
 * What a dug footing asks of the bars; empty where none is dug.
 */
trench: string, };

export type WrittenMove = { frame: number, from: string, to: string, built_to: string, };

export type WrittenString = { 
/**
 * Above the ground at station 0.
 */
height: string, 
/**
 * Between the faces.
 */
width: string, 
/**
 * Under the board: what is measured down where the ground is not level.
 */
below_board: string, 
/**
 * A row of throughs lies here.
 */
throughs: boolean, 
/**
 * The top, where the cope begins.
 */
top: boolean, };

export type WrittenStringToBring = { total: string, tail: string, sag: string, };

export type WrittenStone = { 
/**
 * The rock's word in the course file; empty if none is given.
 */
rock: string, built: string, 
/**
 * `1.3 t to the metre`; `1100 lb to the foot`.
 */
per_length: string, low: string, mid: string, high: string, 
/**
 * The order as a sentence; nothing to order is said too.
 */
order: string, 
/**
 * Whole loads for the high figure; null if a load's size is not given.
 */
loads: number | null, load: string, kinds: Array<WrittenKind>, throughs: Array<WrittenThroughRow>, through_count: number, copes: number, 
/**
 * Along the wall.
 */
cope_thickness: string, 
/**
 * Of one cope; empty if there is none.
 */
cope_mass: string, density: string, density_source: string, voids: string, waste: string, 
/**
 * What lies there, as a sentence.
 */
on_site: string, 
/**
 * What an old wall gives, as a sentence; empty if there is none.
 */
old_wall: string, 
/**
 * `12.1 t to 14.9 t`.
 */
built_range: string, 
/**
 * The figures all of it rests on, with their sources.
 */
rests_on: Array<WrittenRestsOn>, 
/**
 * What sort of throughs are counted, as a sentence; empty for none.
 */
through_reach: string, };

export type WrittenKind = { kind: string, built: string, 
/**
 * `2.1 t to 2.9 t`: four in five are within.
 */
built_range: string, 
/**
 * With what is left over or unusable.
 */
wanted: string, 
/**
 * High, less what is there; empty for nothing.
 */
order: string, 
/**
 * Nothing of this kind is built in.
 */
none: boolean, };

export type WrittenRestsOn = { 
/**
 * A fixed word for programs.
 */
id: string, 
/**
 * What it is.
 */
what: string, 
/**
 * Its centre.
 */
figure: string, 
/**
 * `20 % to 35 %`: four in five are within.
 */
range: string, 
/**
 * Who says so.
 */
source: string, };

export type WrittenThroughRow = { height: string, length: string, count: number, mass: string, };

export type WrittenDelivery = { 
/**
 * `wall stone` or `drainage stone`.
 */
what: string, 
/**
 * So much must come.
 */
mass: string, 
/**
 * `2 loads`; this and the next two are empty if the size of a load is not given.
 */
loads: string, 
/**
 * One load.
 */
load: string, 
/**
 * All loads together.
 */
loads_mass: string, 
/**
 * The last day to order.
 */
order_by: string, 
/**
 * The last working day before the course.
 */
there_by: string, };

export type WrittenKit = { 
/**
 * One line a tool.
 */
lines: Array<WrittenKitLine>, 
/**
 * All that are needed.
 */
mass: string, 
/**
 * How many lines are short.
 */
short: number, };

export type WrittenKitLine = { item: string, 
/**
 * `8`, `3 pairs`.
 */
need: string, 
/**
 * Empty if nobody has counted.
 */
have: string, 
/**
 * Empty if nobody has counted or none is missing.
 */
short: string, 
/**
 * What to do about what is short; which course has it, where one has. Empty if none is.
 */
cure: string, 
/**
 * How many of those held need care or are broken, in words; empty for none.
 */
state: string, 
/**
 * Whose they are; empty for the instructor's own.
 */
owners: string, 
/**
 * What to do to it before the course; empty for nothing.
 */
prepare: string, why: string, 
/**
 * Who says so, or that the rule was changed.
 */
source: string, 
/**
 * The rule it comes from, by name.
 */
rule: string, mass: string, place: string, safety_critical: boolean, consumable: boolean, };

export type WrittenHeaps = { 
/**
 * The room all of it takes, as a sentence; empty where nothing lies.
 */
ground: string, 
/**
 * The farthest a barrow goes, as a sentence; empty where nothing is tipped.
 */
run: string, 
/**
 * What has to be said about it.
 */
notes: Array<string>, };

export type WrittenLifting = { 
/**
 * The lifts of the work, in its order.
 */
lifts: Array<WrittenLift>, 
/**
 * This wall's own heavy stones.
 */
stones: Array<WrittenHeavyStone>, 
/**
 * What moves stones that two people may not lift, as a sentence.
 */
heavier: string, 
/**
 * How stone is held and moved in all of these, as a sentence.
 */
held: string, 
/**
 * Who says how it is held.
 */
held_source: string, 
/**
 * What the guides leave out.
 */
limits: Array<string>, };

export type WrittenLift = { stage: string, 
/**
 * `the ground to knee height`.
 */
way: string, from: string, to: string, niosh: string, men: string, women: string, one_person: string, 
/**
 * Together, one of them giving the word.
 */
two_people: string, 
/**
 * What one person may lift as a flat stone: `20 by 14 by 7 cm`.
 */
flat: string, };

export type WrittenHeavyStone = { 
/**
 * What it is.
 */
stone: string, 
/**
 * What it weighs.
 */
mass: string, 
/**
 * What to do, as a sentence: the easiest of the ways to its place.
 */
answer: string, };

export type WrittenLoads = { 
/**
 * In order; what is needed first goes on the first.
 */
runs: Array<WrittenRun>, 
/**
 * What is too heavy for any vehicle, in words; empty for nothing.
 */
fits_nowhere: string, 
/**
 * The same, line by line.
 */
too_heavy: Array<WrittenLoadLine>, 
/**
 * How many runs, and whether fewer could be, as a sentence.
 */
told: string, 
/**
 * What the driver minds.
 */
notes: Array<string>, };

export type WrittenRun = { number: number, holds: Array<WrittenHold>, };

export type WrittenHold = { 
/**
 * What it is called.
 */
name: string, 
/**
 * What it carries.
 */
mass: string, 
/**
 * What it may carry beside its people.
 */
limit: string, 
/**
 * The one as a share of the other.
 */
share: string, 
/**
 * In loading order: what is needed first goes in last.
 */
lines: Array<WrittenLoadLine>, };

export type WrittenLoadLine = { item: string, count: number, 
/**
 * `8`, `3 pairs`.
 */
carried: string, mass: string, };

export type WrittenMoney = { 
/**
 * One line for each price given.
 */
lines: Array<WrittenCostLine>, 
/**
 * All costs.
 */
total: string, 
/**
 * Shared among the students.
 */
per_head: string, 
/**
 * All fees; empty if no fee is given.
 */
income: string, 
/**
 * Fees less costs; empty if no fee is given.
 */
left: string, 
/**
 * With how many students it breaks even, as a sentence; empty if no fee is given.
 */
break_even: string, 
/**
 * The same sums for groups of other sizes.
 */
by_size: Array<WrittenGroupRow>, };

export type WrittenCostLine = { cost: string, how: string, amount: string, };

export type WrittenGroupRow = { students: number, instructors: number, loads: number, total: string, per_head: string, left: string, 
/**
 * It is the group of this course.
 */
this: boolean, };

export type WrittenStint = { 
/**
 * Counted from 1.
 */
number: number, 
/**
 * Where it begins.
 */
from: string, 
/**
 * Where it ends.
 */
to: string, 
/**
 * How long it is.
 */
length: string, 
/**
 * Names with experience.
 */
members: Array<string>, };

export type WrittenDay = { 
/**
 * Counts from 1.
 */
number: number, 
/**
 * In full.
 */
date: string, 
/**
 * `09:00`.
 */
start: string, 
/**
 * `16:30`.
 */
finish: string, 
/**
 * `05:52`, or a word where the sun does not rise.
 */
sunrise: string, 
/**
 * The same for sunset.
 */
sunset: string, 
/**
 * The day's entries in order.
 */
entries: Array<WrittenEntry>, };

export type WrittenEntry = { start: string, finish: string, 
/**
 * `45 min`, `2 h 15 min`.
 */
lasts: string, what: string, kind: string, 
/**
 * Its share of the day, from 0 to 1, for drawing it as a bar.
 */
from_share: number, 
/**
 * Where it ends, as a share of the day.
 */
to_share: number, };

export type WrittenChance = { 
/**
 * `83 %`.
 */
chance: string, 
/**
 * `80 %`.
 */
wished: string, 
/**
 * Below the wish.
 */
below: boolean, 
/**
 * What the chance was worked out from.
 */
from: string, 
/**
 * When each stage is done.
 */
stages: Array<WrittenStage>, };

export type WrittenStage = { name: string, note: string, 
/**
 * `3.2 t`, `4 frames`.
 */
amount: string, 
/**
 * At the usual pace.
 */
usually: string, early: WrittenMark, likely: WrittenMark, late: WrittenMark, };

export type WrittenMark = { 
/**
 * `day 1, 14:20`, or `not within the course`.
 */
text: string, 
/**
 * Whether it is reached.
 */
reached: boolean, };

export type WrittenCaution = { 
/**
 * A fixed word for programs.
 */
id: string, 
/**
 * What to do or not to do.
 */
text: string, 
/**
 * Who says so.
 */
source: string, 
/**
 * Students are told.
 */
for_students: boolean, 
/**
 * It follows from this plan's own numbers.
 */
of_this_plan: boolean, };

export type WrittenToDo = { 
/**
 * A word for it that stays, unique in the list.
 */
id: string, 
/**
 * Where it belongs: `stone`, `kit`, `venue` and so on.
 */
part: string, 
/**
 * What, with the numbers.
 */
text: string, 
/**
 * By when; empty where it does not matter.
 */
by: string, 
/**
 * The same date as `2027-04-24`; empty where it does not matter.
 */
date: string, 
/**
 * The instructor has marked it done.
 */
done: boolean, 
/**
 * It keeps the course from being ready.
 */
counts: boolean, };

export type Reason = { 
/**
 * A fixed word for programs, as `length`.
 */
id: string, 
/**
 * What the figure is of.
 */
title: string, 
/**
 * The figure as it is shown.
 */
figure: string, 
/**
 * The reason in words; the first sentence is the answer.
 */
sentences: Array<string>, 
/**
 * The sum, line by line.
 */
steps: Array<ReasonStep>, 
/**
 * What went in that nobody gave, and who says so.
 */
sources: Array<ReasonSource>, };

export type ReasonStep = { 
/**
 * What it works out.
 */
what: string, 
/**
 * `2 × 1.07 m / 6 + 0.41 m = 0.767 m`; `9.00 m / 3.00 m = 3, rounded up: 3`.
 */
line: string, };

export type ReasonSource = { 
/**
 * What it is; with its figure where it has one.
 */
what: string, 
/**
 * Who says so.
 */
source: string, };
