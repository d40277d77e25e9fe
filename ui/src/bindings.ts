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

export type Drawings = { section: string, elevation: string, setting_out: string, gauge: string, };

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
 * What decided the length.
 */
sizing: Sizing, };

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

export type Frames = { 
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
 * The bars.
 */
bars: Bars, 
/**
 * One per bar.
 */
caps: number, 
/**
 * The leapfrog, when fewer frames are in stock than stations.
 */
moves: Array<Move>, 
/**
 * String heights from the ground up.
 */
strings: Array<StringHeight>, };

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
right_rise_m: number, };

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

export type StringHeight = { 
/**
 * Above the ground at station 0.
 */
height_m: number, 
/**
 * Between the faces there.
 */
width_m: number, };

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

export type WrittenWall = { length: string, height: string, top_width: string, base_width: string, 
/**
 * `1 in 8, both faces`.
 */
batter: string, section_area: string, face_area: string, body_volume: string, 
/**
 * Empty without a footing.
 */
footing_volume: string, footing_depth: string, footing_width: string, 
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

export type WrittenFrames = { count: number, sets: number, 
/**
 * Missing; null if nobody has counted.
 */
short: number | null, end_profiles: number, bay: string, 
/**
 * Across one bay: inner face of a left bar to the inner face of the next right bar.
 */
diagonal: string, rows: Array<WrittenFrameRow>, bars: WrittenBars, moves: Array<WrittenMove>, strings: Array<WrittenString>, 
/**
 * The highest string first, as it is read on the frame.
 */
top: string, };

export type WrittenFrameRow = { number: number, station: string, left_offset: string, right_offset: string, base_width: string, left_rise: string, right_rise: string, };

export type WrittenBars = { count: number, 
/**
 * The stock length chosen; empty if none is long enough.
 */
length: string, needed: string, size: string, mass: string, embedment: string, projection: string, };

export type WrittenMove = { frame: number, from: string, to: string, built_to: string, };

export type WrittenString = { 
/**
 * Above the ground.
 */
height: string, 
/**
 * Between the faces.
 */
width: string, 
/**
 * A row of throughs lies here.
 */
throughs: boolean, 
/**
 * The top, where the cope begins.
 */
top: boolean, };

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
