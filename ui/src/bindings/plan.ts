// A plan as numbers, SI throughout.
// Generated from the shapes in Rust by `cargo xtask bindings`. Do not edit.

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
 * Where it lies before it is built in.
 */
heaps: Heaps, 
/**
 * What of it is ordered, and by when; nothing where nothing is lacking.
 */
deliveries: Array<Delivery>, 
/**
 * What one person may lift.
 */
lifting: Lifting, 
/**
 * The tools.
 */
kit: Array<KitLine>, 
/**
 * What travels in which vehicle; null if no vehicle is given.
 */
loads: Loads | null, 
/**
 * What it costs; null if the course says nothing of money.
 */
money: Money | null, 
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
 * What could be done otherwise.
 */
advice: Advice, 
/**
 * How it stands on the day; null before anything has been built.
 */
today: Today | null, 
/**
 * What the weather typed in comes to.
 */
weather: Array<DayWeather>, 
/**
 * Wishes that can't be had.
 */
unmet: Array<WishUnmet>, 
/**
 * Daylight.
 */
sun: Array<SunDay>, 
/**
 * What to mind.
 */
cautions: Array<Caution>, 
/**
 * What can hurt someone, the highest remaining risk first.
 */
hazards: Array<Hazard>, 
/**
 * What is not ready.
 */
to_do: Array<ToDo>, };

export type Advice = { 
/**
 * What would make the wall longer, the most first.
 */
lifts: Array<WhatIf>, 
/**
 * The chance of finishing by length.
 */
curve: Array<CurvePoint>, 
/**
 * For a group too large for one wall.
 */
two_walls: TwoWalls | null, 
/**
 * Where the length is given and its chance below the wish: the greatest height that keeps
 * it.
 */
highest_m: number | null, 
/**
 * Pairs that find no place at the wall.
 */
idle_pairs: number, };

export type WhatIf = { 
/**
 * The change.
 */
what: string, 
/**
 * The length it allows.
 */
length_m: number, 
/**
 * What would then decide.
 */
binding: string, };

export type CurvePoint = { length_m: number, chance: number, };

export type TwoWalls = { students: [number, number], instructors: [number, number], lengths_m: [number, number], };

export type Today = { 
/**
 * The time of the last report.
 */
now: string, 
/**
 * How far each stage has come.
 */
done: Array<StageDone>, 
/**
 * The share of the whole work done at each time something was told.
 */
told: Array<ToldShare>, 
/**
 * What the rest will take.
 */
finish: Finish, 
/**
 * What would help, the most first.
 */
cures: Array<Cure>, 
/**
 * Reports of so much in so little time that they may be slips.
 */
quick: Array<Quick>, 
/**
 * What makes the wall safe to leave as it stands.
 */
safe: Array<string>, 
/**
 * When progress is asked for next.
 */
ask_at: string | null, };

export type StageDone = { 
/**
 * The stage's id.
 */
stage: string, 
/**
 * The share done, bay by bay.
 */
bays: Array<number>, };

export type ToldShare = { at: string, share: number, };

export type Quick = { 
/**
 * Its place among the reports of the course file, counted from 1.
 */
report: number, 
/**
 * How many times quicker than usual it is.
 */
times: number, };

export type Cure = { 
/**
 * What.
 */
what: string, 
/**
 * The chance of finishing with it.
 */
chance: number, 
/**
 * By how much that is better.
 */
gain: number, };

export type Holdup = { 
/**
 * What.
 */
what: string, 
/**
 * The share of all courses.
 */
share: number, 
/**
 * The share of the courses that did not finish.
 */
of_unfinished: number, };

export type DayWeather = { 
/**
 * Counts from 1.
 */
day: number, 
/**
 * In the shade.
 */
heat_index_c: number | null, 
/**
 * With full sun.
 */
full_sun_heat_index_c: number | null, 
/**
 * The band of heat.
 */
heat_band: string | null, 
/**
 * Minutes of rest in each hot hour.
 */
rest_minutes: number, 
/**
 * In the coldest hour.
 */
wind_chill_c: number | null, 
/**
 * The band of cold.
 */
cold_band: string | null, 
/**
 * What the day asks for, the most pressing first.
 */
asks: Array<Ask>, };

export type Ask = { 
/**
 * What to do.
 */
text: string, 
/**
 * Who says so.
 */
source: string, };

export type WishUnmet = { 
/**
 * The wish among those of the file, counted from 1; null for one about pairs.
 */
wish: number | null, 
/**
 * What can't be had, and why.
 */
text: string, };

export type DayPeople = { 
/**
 * Counts from 1.
 */
day: number, 
/**
 * Names of those who come.
 */
present: Array<string>, 
/**
 * Who is away and when.
 */
away: Array<Away>, 
/**
 * Who builds where that day.
 */
stints: Array<DayStint>, 
/**
 * As on the first day.
 */
same_as_first: boolean, 
/**
 * Working minutes of the day: its open time, slow hours counted as what they are worth.
 */
working_minutes: number, };

export type DayStint = { from_m: number, to_m: number, members: Array<string>, };

export type Away = { who: string, from: string, until: string, };

export type Round = { 
/**
 * The stage's id.
 */
stage: string, 
/**
 * Stint by stint.
 */
places: Array<Place>, 
/**
 * Turns at the built ends.
 */
heads: Array<Turn>, };

export type Place = { 
/**
 * Counts from 1.
 */
stint: number, 
/**
 * Names of those at the left face.
 */
left: Array<string>, 
/**
 * Names of those at the right face.
 */
right: Array<string>, };

export type Turn = { 
/**
 * `start` or `finish`.
 */
end: string, 
/**
 * The pair, counted from 1 by the stint it began at.
 */
pair: number, 
/**
 * Shares of the stage.
 */
from: number, 
/**
 * Shares of the stage.
 */
to: number, };

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
 * The same with its range.
 */
built_range_t: Range, 
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
 * Each kind with its range; these do not add up to the range of the whole.
 */
kinds: Array<KindRange>, 
/**
 * The figures all of it rests on.
 */
rests_on: Array<RestsOn>, 
/**
 * What an old wall that is stripped out gives; null if there is none.
 */
old_wall_t: Range | null, 
/**
 * The pitch was built and taken down before: nothing is ordered.
 */
practice_pitch: boolean, 
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

export type KindRange = { 
/**
 * `footing`, `face`, `hearting`, `throughs` or `copes`.
 */
kind: string, 
/**
 * In the finished wall.
 */
built_t: Range, 
/**
 * Still to be delivered.
 */
to_deliver_t: Range, };

export type RestsOn = { 
/**
 * A fixed word for programs.
 */
id: string, 
/**
 * kg/m3 for `density`, else a share.
 */
centre: number, 
/**
 * One in ten is below.
 */
low: number, 
/**
 * One in ten is above.
 */
high: number, 
/**
 * Who says so.
 */
source: string, };

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

export type Delivery = { 
/**
 * `wall stone` or `drainage stone`.
 */
what: string, 
/**
 * So much must come.
 */
mass_t: number, 
/**
 * In so many whole loads; null if the size of one is not given.
 */
loads: number | null, 
/**
 * One load.
 */
load_t: number | null, 
/**
 * All loads together.
 */
loads_t: number | null, 
/**
 * The last day to order.
 */
order_by: string, 
/**
 * The last working day before the course.
 */
there_by: string, };

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
 * Which courses have booked what is missing, where enough are held.
 */
clash: Array<Taken>, 
/**
 * How to come by what is short: `borrow`, `hire` or `buy`.
 */
way: string, 
/**
 * What to do to it before the course; empty for nothing.
 */
prepare: string, 
/**
 * How the need comes about.
 */
why: string, 
/**
 * Who says that so many are needed, or that the rule was changed.
 */
source: string, 
/**
 * All that are needed.
 */
mass_kg: number, 
/**
 * Of one.
 */
each_kg: number, 
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

export type Taken = { course: string, date: string, count: number, };

export type Heaps = { 
/**
 * Row by row from the wall outwards.
 */
heaps: Array<Heap>, 
/**
 * The middle of each barrow way, as a station.
 */
ways_m: Array<number>, 
/**
 * Tonnes for which there is no room within reach.
 */
waiting_t: number, 
/**
 * The room all of it takes, along the first direction of the line and across it.
 */
ground_m: [number, number], 
/**
 * The farthest a barrow goes from the tip; null where nothing is tipped.
 */
longest_run_m: number | null, };

export type Heap = { kind: string, 
/**
 * `left` or `right`, looking from station 0.
 */
side: string, from_m: number, to_m: number, 
/**
 * Centre line to its near edge.
 */
near_m: number, 
/**
 * Centre line to its far edge.
 */
far_m: number, height_m: number, 
/**
 * As it lies, air included.
 */
volume_m3: number, mass_kg: number, };

export type Lifting = { 
/**
 * The lifts of the work, in its order.
 */
lifts: Array<Lift>, 
/**
 * Who or what moves this wall's own heavy stones.
 */
stones: Array<HeavyStone>, 
/**
 * What the guides leave out.
 */
limits: Array<string>, };

export type Lift = { stage: string, from: string, to: string, from_height_m: number, to_height_m: number, 
/**
 * The revised NIOSH equation, in its metric form.
 */
niosh_kg: number, 
/**
 * The UK filter, for men.
 */
filter_men_kg: number, 
/**
 * The UK filter, for women.
 */
filter_women_kg: number, 
/**
 * The least of the three.
 */
one_person_kg: number, 
/**
 * The edge of a cube of that mass.
 */
cube_m: number, 
/**
 * Length, depth and height of a flat stone of that mass.
 */
flat_m: [number, number, number], };

export type HeavyStone = { stone: string, mass_kg: number, 
/**
 * One word for each lift, in their order.
 */
answers: Array<string>, };

export type Loads = { 
/**
 * In order; what is needed first goes on the first.
 */
runs: Array<Run>, 
/**
 * Heavier, piece by piece, than anything may carry.
 */
fits_nowhere: Array<LoadLine>, 
/**
 * Fewer runs can't be.
 */
fewest_runs: number, };

export type Run = { 
/**
 * Vehicles and trailers in the order given.
 */
holds: Array<LoadedHold>, };

export type LoadedHold = { 
/**
 * What it is called.
 */
name: string, 
/**
 * What it may carry beside its people.
 */
limit_kg: number, 
/**
 * What it carries.
 */
mass_kg: number, 
/**
 * In loading order: what is needed first goes in last.
 */
lines: Array<LoadLine>, };

export type LoadLine = { 
/**
 * What it is.
 */
item: string, 
/**
 * How many.
 */
count: number, 
/**
 * All of them.
 */
mass_kg: number, };

export type Money = { 
/**
 * ISO 4217; null if it is not given.
 */
currency: string | null, 
/**
 * One line for each price given.
 */
lines: Array<CostLine>, 
/**
 * All costs.
 */
total: number, 
/**
 * Shared among the students.
 */
per_head: number, 
/**
 * All fees; null if no fee is given.
 */
income: number | null, 
/**
 * Fees less costs.
 */
left: number | null, 
/**
 * The least number of students whose fees cover the costs; null if none do, or no fee
 * is given.
 */
break_even: number | null, 
/**
 * First and last of the numbers above it that do not break even.
 */
but_not: Array<[number, number]>, 
/**
 * The same sums for groups of other sizes.
 */
by_size: Array<GroupCost>, };

export type CostLine = { cost: string, how: string, amount: number, };

export type GroupCost = { students: number, instructors: number, loads: number, total: number, per_head: number, left: number | null, };

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
stints: Array<Stint>, 
/**
 * Who is there, day by day.
 */
days: Array<DayPeople>, 
/**
 * Who does what, stage by stage.
 */
rotation: Array<Round>, };

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
kind: string, 
/**
 * The stage's id, where it is one.
 */
stage: string | null, 
/**
 * The lesson's id, where it is one.
 */
lesson: string | null, };

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
by_stage: Array<StageTimes>, 
/**
 * What held the simulated courses up most.
 */
holdups: Array<Holdup>, };

export type StageTimes = { stage: string, p10: string | null, p50: string | null, p90: string | null, 
/**
 * The share of courses in which it is done by the end of the first day.
 */
on_day_one: number, };

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

export type Hazard = { 
/**
 * A word for it that stays.
 */
id: string, 
/**
 * What it is called.
 */
name: string, 
/**
 * What could happen.
 */
harm: string, 
/**
 * Who could be hurt.
 */
who: string, 
/**
 * Why it is met on this course; null where every course meets it.
 */
because: string | null, 
/**
 * What is answered on the site; null where no one need ask.
 */
ask: string | null, 
/**
 * With nothing done about it.
 */
before: Risk, 
/**
 * What is done about it.
 */
controls: Array<string>, 
/**
 * With all of that done.
 */
after: Risk, 
/**
 * Ids of the cautions that say more.
 */
cautions: Array<string>, 
/**
 * Who says so.
 */
source: string, };

export type Risk = { 
/**
 * `unlikely`, `possible` or `likely`.
 */
likelihood: string, 
/**
 * `slight`, `serious` or `grave`.
 */
severity: string, 
/**
 * `very low`, `low`, `medium`, `high` or `very high`.
 */
level: string, };

export type ToDo = { 
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
 * By when.
 */
by: string | null, 
/**
 * The instructor has marked it done.
 */
done: boolean, 
/**
 * It keeps the course from being ready.
 */
counts: boolean, };
