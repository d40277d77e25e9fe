// Generated from the shapes in Rust by `cargo xtask bindings`. Do not edit.

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
 * Whether there is something to undo.
 */
can_undo: boolean, 
/**
 * Whether there is something to redo.
 */
can_redo: boolean, 
/**
 * Every value of the course file as typed, by key.
 */
values: { [key in string]: string }, 
/**
 * Whether students are named one by one.
 */
roster: boolean, 
/**
 * What the tables offer to choose from.
 */
choices: Choices, 
/**
 * Every number of the plan.
 */
plan: Plan, 
/**
 * The same as a person reads it.
 */
written: Written, 
/**
 * The drawings.
 */
drawings: Drawings, 
/**
 * What the last change moved, as `stone 12.4 t -> 13.9 t`.
 */
moved: Array<Moved>, };

export type Choices = { rocks: Array<[string, string]>, bars: Array<[string, string]>, };

export type Drawings = { section: string, elevation: string, line_plan: string, setting_out: string, frame: string, gauge: string, };

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
what: string, };

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
 * Characters that no bundled font holds, if any; a sign stands in their place.
 */
unprintable: string, };

export type Plan = { 
/**
 * The wall.
 */
wall: Wall, 
/**
 * Its setting-out.
 */
frames: Frames, 
/**
 * Its stone.
 */
stone: Stone, 
/**
 * The tools.
 */
kit: Array<KitLine>, 
/**
 * Who builds where.
 */
people: People, 
/**
 * The stages there is work for.
 */
stages: Array<StageWork>, 
/**
 * The days.
 */
timetable: Array<Entry>, 
/**
 * The chance of finishing.
 */
finish: Finish, 
/**
 * Daylight.
 */
sun: Array<SunDay>, 
/**
 * What to mind.
 */
cautions: Array<Caution>, 
/**
 * What is not ready.
 */
to_do: Array<ToDo>, };

export type Wall = { 
/**
 * `freestanding` or `retaining`.
 */
kind: string, 
/**
 * Along the centre line.
 */
length_m: number, 
/**
 * Ground to the underside of the cope.
 */
height_m: number, 
/**
 * Under the cope.
 */
top_width_m: number, 
/**
 * At the ground.
 */
base_width_m: number, 
/**
 * Of the body.
 */
section_area_m2: number, 
/**
 * Air included.
 */
body_volume_m3: number, 
/**
 * Air included.
 */
footing_volume_m3: number, 
/**
 * Air included.
 */
cope_volume_m3: number, 
/**
 * One face: length by height to the cope.
 */
face_area_m2: number, 
/**
 * What raked ends leave out of the body.
 */
raked_away_m3: number, 
/**
 * The n of 1 in n on the left; null for a plumb face.
 */
batter_left: number | null, 
/**
 * The same on the right.
 */
batter_right: number | null, 
/**
 * The stretches of its line in order.
 */
line: Array<LineStretch>, 
/**
 * It comes round to where it began, and has no ends.
 */
closed: boolean, 
/**
 * `level`, `follows ground` or `stepped`.
 */
top: string, 
/**
 * Along the line and up and down: where anything changes.
 */
profile: Array<ProfilePoint>, 
/**
 * Both ends; none of a ring.
 */
ends: Array<WallEnd>, 
/**
 * The bank behind it; null where it stands free.
 */
retaining: Retaining | null, 
/**
 * What decided the length.
 */
sizing: Sizing, };

export type LineStretch = { 
/**
 * Where it begins.
 */
from_m: number, 
/**
 * Where it ends.
 */
to_m: number, 
/**
 * Of the centre line; null for a straight.
 */
radius_m: number | null, 
/**
 * `left` or `right`; null for a straight.
 */
turn: string | null, };

export type ProfilePoint = { 
/**
 * Along the centre line.
 */
station_m: number, 
/**
 * Level of the ground on the centre line.
 */
ground_m: number, 
/**
 * Level of the underside of the cope.
 */
top_m: number, };

export type WallEnd = { 
/**
 * Along the centre line.
 */
station_m: number, 
/**
 * `head`, `joined` or `raked`.
 */
kind: string, 
/**
 * Ground to the underside of the cope.
 */
height_m: number, 
/**
 * The n of the end's own 1 in n; null where it is plumb.
 */
batter: number | null, 
/**
 * End stones laid along the wall, both faces together.
 */
long_stones: number, 
/**
 * End stones laid across it.
 */
short_stones: number, 
/**
 * What its lean leaves out of the body.
 */
left_out_m3: number, };

export type Sizing = { 
/**
 * `elbow room`, `pace`, `stone`, `frames`, `site` or `given`.
 */
binding: string, 
/**
 * All limits.
 */
limits: Array<Limit>, };

export type Limit = { 
/**
 * The reason.
 */
limit: string, 
/**
 * `least` or `most`.
 */
bound: string, 
/**
 * Where it bites.
 */
length_m: number, };

export type Retaining = { 
/**
 * The bank's side: `left` or `right`.
 */
retained: string, 
/**
 * Where the wall is highest.
 */
highest_m: number, 
/**
 * Bottom of the footing to the top with its cope, there.
 */
from_footing_m: number, 
/**
 * The building authority and a licensed engineer are to be asked.
 */
must_ask: boolean, 
/**
 * Base width for each unit of height.
 */
base_share: number, 
/**
 * Thickness of the drainage stone.
 */
drainage_m: number, 
/**
 * The drainage stone as it lies.
 */
backfill_m3: number, 
/**
 * Its mass.
 */
backfill_t: number, 
/**
 * The check for one metre where the wall is highest.
 */
check: Check, };

export type Check = { 
/**
 * Coulomb's active coefficient.
 */
ka: number, 
/**
 * Height of the fill.
 */
bank_height_m: number, 
/**
 * Of the fill.
 */
fill_kg_m3: number, 
/**
 * Friction within the fill.
 */
friction_degrees: number, 
/**
 * Friction between the fill and the back.
 */
wall_friction_degrees: number, 
/**
 * Friction under the wall.
 */
base_friction_degrees: number, 
/**
 * The bank's surface from level.
 */
slope_degrees: number, 
/**
 * A load spread over the bank.
 */
load_kpa: number, 
/**
 * Weight of the wall.
 */
weight_kn_m: number, 
/**
 * Thrust on the back.
 */
thrust_kn_m: number, 
/**
 * Where it meets the back, above the ground in front.
 */
thrust_height_m: number, 
/**
 * Safety against tipping about the toe.
 */
overturning: number, 
/**
 * Safety against sliding.
 */
sliding: number, 
/**
 * Where the resultant meets the base, as a share of it from the toe.
 */
resultant_share: number | null, 
/**
 * Pressure on the ground under the toe.
 */
toe_pressure_kpa: number | null, 
/**
 * `above both`, `below overturning`, `below sliding` or `below both`. Above is no approval.
 */
verdict: string, };

export type Frames = { 
/**
 * `bar` or `timber`.
 */
kind: string, 
/**
 * Frames the line takes.
 */
count: number, 
/**
 * Sets to bring.
 */
sets: number, 
/**
 * Frames missing; null if nobody has counted.
 */
short: number | null, 
/**
 * One per built end, apart from the frames.
 */
end_profiles: number, 
/**
 * The longest distance between neighbours.
 */
bay_m: number, 
/**
 * One row per frame, in order of station.
 */
rows: Array<FrameRow>, 
/**
 * From frame to frame; the last bay of a ring comes back to station 0.
 */
bays: Array<Bay>, 
/**
 * The arcs of the line.
 */
curves: Array<Curve>, 
/**
 * The bars; null where the frames are of timber.
 */
bars: Bars | null, 
/**
 * One per bar.
 */
caps: number, 
/**
 * The board of each bar frame.
 */
board: Board | null, 
/**
 * What the bars do in a dug footing.
 */
trench: Trench | null, 
/**
 * Cut list and lumber; null where the frames are of bars.
 */
timber: Timber | null, 
/**
 * The leapfrog, when fewer frames are in stock than stations.
 */
moves: Array<Move>, 
/**
 * What building in bays does, where frames are moved along.
 */
leapfrog: Leapfrog | null, 
/**
 * String heights from the ground up.
 */
strings: Array<StringHeight>, 
/**
 * The string to bring.
 */
string: StringToBring, };

export type FrameRow = { 
/**
 * Along the centre line.
 */
station_m: number, 
/**
 * Level of the ground on the centre line.
 */
ground_m: number, 
/**
 * Ground to the underside of the board, on the centre line.
 */
height_m: number, 
/**
 * Between the bars at the ground.
 */
base_width_m: number, 
/**
 * Centre line to the inner face of the left bar at the ground.
 */
left_offset_m: number, 
/**
 * The same on the right.
 */
right_offset_m: number, 
/**
 * Ground to the underside of the board at the left bar, plumb.
 */
left_rise_m: number, 
/**
 * The same on the right.
 */
right_rise_m: number, 
/**
 * A level board has equal rises here.
 */
level_across: boolean, 
/**
 * On the ground plan, along the direction in which the line sets off.
 */
x_m: number, 
/**
 * On the ground plan, to the left of that direction.
 */
y_m: number, 
/**
 * The line's own direction, anticlockwise from the first.
 */
heading_degrees: number, };

export type Bay = { 
/**
 * Station of the frame it begins at.
 */
from_m: number, 
/**
 * Station of the frame it ends at.
 */
to_m: number, 
/**
 * A tape pulled straight between the left marks at the ground.
 */
left_taped_m: number, 
/**
 * The same on the right.
 */
right_taped_m: number, 
/**
 * From the left mark to the next right one.
 */
left_to_right_m: number, 
/**
 * From the right mark to the next left one.
 */
right_to_left_m: number, 
/**
 * How far a straight string is off the left face at the middle.
 */
left_bow_m: number, 
/**
 * The same on the right.
 */
right_bow_m: number, 
/**
 * The longest string of the left face, without tails.
 */
left_string_m: number, 
/**
 * The same on the right.
 */
right_string_m: number, };

export type Curve = { 
/**
 * Where it begins.
 */
from_m: number, 
/**
 * Where it ends.
 */
to_m: number, 
/**
 * Of the centre line.
 */
radius_m: number, 
/**
 * `left` or `right`.
 */
turn: string, 
/**
 * The longest of its bays.
 */
bay_m: number, 
/**
 * The most a straight string is off the left face.
 */
left_bow_m: number, 
/**
 * The same on the right.
 */
right_bow_m: number, 
/**
 * The longest bay that keeps the outer face's bow within the tolerance.
 */
spacing_for_tolerance_m: number, 
/**
 * The outer face's bow is more than the tolerance.
 */
too_far: boolean, };

export type Bars = { 
/**
 * Two to a frame.
 */
count: number, 
/**
 * The stock length chosen; null if none is long enough.
 */
length_m: number | null, 
/**
 * The shortest that would do.
 */
needed_length_m: number, 
/**
 * Nominal.
 */
diameter_mm: number, 
/**
 * All bars together.
 */
mass_kg: number | null, };

export type Board = { 
/**
 * Along the board.
 */
length_m: number, 
/**
 * Along the wall.
 */
width_m: number, 
/**
 * Upwards.
 */
thickness_m: number, 
/**
 * From the middle of one eye to the middle of the other, at the underside.
 */
eyes_m: number, 
/**
 * Of an eye across.
 */
eye_m: number, };

export type Trench = { 
/**
 * The bars pass through the footing rather than beside it.
 */
through_footing: boolean, 
/**
 * Gaps to leave in the footing.
 */
gaps: number, 
/**
 * Width of one along the wall.
 */
gap_m: number, 
/**
 * Along the bar, below the bottom of the trench: all that grips.
 */
grip_m: number, };

export type Move = { 
/**
 * The frame, counted from 1 at station 0.
 */
frame: number, 
/**
 * Where it stood.
 */
from_m: number, 
/**
 * Where it goes.
 */
to_m: number, 
/**
 * The wall stands to its full height up to here before the frame is drawn.
 */
built_to_m: number, };

export type Timber = { 
/**
 * Of a batten's broad face.
 */
width_m: number, 
/**
 * Of a batten.
 */
thickness_m: number, 
/**
 * Like pieces of all frames together.
 */
cut_list: Array<CutRow>, 
/**
 * What to buy.
 */
buy: Array<Buy>, 
/**
 * How each batten is cut.
 */
patterns: Array<Pattern>, 
/**
 * All that is bought.
 */
bought_m: number, 
/**
 * All that ends up in frames.
 */
used_m: number, 
/**
 * No way of cutting can do with less than this.
 */
least_m: number, 
/**
 * What is bought is proved to be the least.
 */
proved_least: boolean, 
/**
 * Rows of the cut list longer than any batten.
 */
too_long: Array<number>, };

export type CutRow = { 
/**
 * `leg`, `rail` or `brace`.
 */
kind: string, 
/**
 * Along its longest edge.
 */
length_m: number, 
/**
 * Off square, at each end.
 */
ends_degrees: [number, number], 
/**
 * How many.
 */
count: number, 
/**
 * The frames they are for, counted from 1.
 */
frames: Array<number>, };

export type Buy = { 
/**
 * Of one batten.
 */
stock_m: number, 
/**
 * How many.
 */
count: number, };

export type Pattern = { 
/**
 * Of the batten.
 */
stock_m: number, 
/**
 * How many are cut so.
 */
times: number, 
/**
 * Row of the cut list, counted from 0, and how many of it.
 */
pieces: Array<[number, number]>, 
/**
 * What is left.
 */
offcut_m: number, };

export type Leapfrog = { 
/**
 * Frames that stand at one time.
 */
in_use: number, 
/**
 * The stretch they span.
 */
room_m: number, 
/**
 * Facing pairs that find a place there.
 */
pairs: number, 
/**
 * Facing pairs the group makes.
 */
of_pairs: number, };

export type StringHeight = { 
/**
 * Above the ground at station 0.
 */
height_m: number, 
/**
 * Between the faces there.
 */
width_m: number, };

export type StringToBring = { 
/**
 * All of it, tails included.
 */
total_m: number, 
/**
 * Beyond a frame at each end of a string.
 */
tail_m: number, 
/**
 * How far the longest one sags at its middle.
 */
sag_m: number, };

export type Stone = { 
/**
 * Of the solid stone.
 */
solid_density_kg_m3: number, 
/**
 * Where it comes from.
 */
density_source: string, 
/**
 * Share of the wall that is air.
 */
voids: number, 
/**
 * Share of what is delivered that is not built in.
 */
waste: number, 
/**
 * In the finished wall.
 */
built_t: number, 
/**
 * In one metre of it.
 */
built_t_per_m: number, 
/**
 * Still to be delivered.
 */
to_deliver_t: Range, 
/**
 * Whole deliveries for the high figure.
 */
loads: number | null, 
/**
 * In the finished wall, by kind.
 */
by_kind: ByKind, 
/**
 * Stones that cross the wall.
 */
throughs: Throughs, 
/**
 * The row on top.
 */
copes: Copes, };

export type Range = { 
/**
 * One in ten is below.
 */
low: number, 
/**
 * The middle.
 */
mid: number, 
/**
 * One in ten is above.
 */
high: number, };

export type ByKind = { footing_t: number, face_t: number, hearting_t: number, throughs_t: number, copes_t: number, };

export type Throughs = { 
/**
 * In all rows.
 */
count: number, 
/**
 * Row by row.
 */
rows: Array<ThroughRow>, };

export type ThroughRow = { 
/**
 * Above the ground.
 */
height_m: number, 
/**
 * Of one through.
 */
length_m: number, 
/**
 * How many.
 */
count: number, 
/**
 * Of one through.
 */
mass_kg: number, };

export type Copes = { 
/**
 * How many stones.
 */
count: number, };

export type KitLine = { 
/**
 * The tool.
 */
item: string, 
/**
 * What it is counted in; empty for pieces.
 */
unit: string, 
/**
 * How many the course needs.
 */
need: number, 
/**
 * How many are there; null if nobody has counted.
 */
have: number | null, 
/**
 * How many are missing; null if nobody has counted.
 */
short: number | null, 
/**
 * How the need comes about.
 */
why: string, 
/**
 * All that are needed.
 */
mass_kg: number, 
/**
 * Where it is used.
 */
place: string, 
/**
 * Without it the work must not begin.
 */
safety_critical: boolean, 
/**
 * Used up by the course.
 */
consumable: boolean, };

export type People = { 
/**
 * How many.
 */
students: number, 
/**
 * How many pairs they make.
 */
pairs: number, 
/**
 * To one instructor; null without one.
 */
students_per_instructor: number | null, 
/**
 * Each student in exactly one.
 */
stints: Array<Stint>, };

export type Stint = { 
/**
 * Where it begins.
 */
from_m: number, 
/**
 * Where it ends.
 */
to_m: number, 
/**
 * Names.
 */
members: Array<string>, 
/**
 * The same people with their experience.
 */
who: Array<Member>, };

export type Member = { 
/**
 * Unique in the group.
 */
name: string, 
/**
 * `novice`, `improver` or `experienced`.
 */
experience: string, };

export type StageWork = { 
/**
 * Its id.
 */
stage: string, 
/**
 * What a person reads.
 */
name: string, 
/**
 * In the unit of its rate.
 */
amount: number, 
/**
 * Clock hours of the whole group at its usual pace.
 */
hours: number, };

export type Entry = { 
/**
 * Counts from 1.
 */
day: number, 
/**
 * Local time with offset.
 */
start: string, 
/**
 * Local time with offset.
 */
finish: string, 
/**
 * What happens.
 */
what: string, 
/**
 * `lesson`, `build`, `break`, `safety` or `tidy`.
 */
kind: string, };

export type Finish = { 
/**
 * The share of simulated courses that finish.
 */
chance: number, 
/**
 * How many were simulated.
 */
samples: number, 
/**
 * What they were drawn from.
 */
seed: number, 
/**
 * When each stage is done.
 */
by_stage: Array<StageTimes>, };

export type StageTimes = { stage: string, p10: string | null, p50: string | null, p90: string | null, };

export type SunDay = { date: string, sunrise: string | null, sunset: string | null, civil_dawn: string | null, civil_dusk: string | null, };

export type Caution = { 
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
for_students: boolean, };

export type ToDo = { 
/**
 * A fixed word for programs.
 */
id: string, 
/**
 * What, with the numbers.
 */
text: string, 
/**
 * By when.
 */
by: string | null, };

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
 * The tools.
 */
kit: WrittenKit, 
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
 * What to mind.
 */
cautions: Array<WrittenCaution>, 
/**
 * What is not ready.
 */
to_do: Array<WrittenToDo>, };

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
cope_thickness: string, density: string, density_source: string, voids: string, waste: string, 
/**
 * What lies there, as a sentence.
 */
on_site: string, };

export type WrittenKind = { kind: string, built: string, 
/**
 * With what is left over or unusable.
 */
wanted: string, };

export type WrittenThroughRow = { height: string, length: string, count: number, mass: string, };

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
short: string, why: string, mass: string, place: string, safety_critical: boolean, consumable: boolean, };

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
 * A fixed word for programs.
 */
id: string, 
/**
 * What, with the numbers.
 */
text: string, 
/**
 * By when; empty where it does not matter.
 */
by: string, };
