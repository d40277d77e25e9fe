//! The setting-out in written figures: frames, bays, bars, boards, strings and moves.

use craft::course::Course;
use craft::frames::{Bay, FrameRow};
use craft::plan::Plan;
use craft::quantity::{Length, Read, Units, show_length, show_mark, show_mass, show_small};
use serde::Serialize;
use ts_rs::TS;

/// The setting-out.
#[derive(Debug, Clone, Serialize, TS)]
#[ts(rename = "WrittenFrames")]
#[allow(missing_docs)]
pub struct Frames {
    pub count: usize,
    pub sets: usize,
    /// Missing; null if nobody has counted.
    pub short: Option<usize>,
    pub end_profiles: usize,
    /// The longest bay.
    pub bay: String,
    pub rows: Vec<Row>,
    /// The ground is not level everywhere, so that levels and rises differ.
    pub sloping: bool,
    pub bays: Vec<BayRow>,
    pub curves: Vec<CurveRow>,
    /// Null where the frames are of timber.
    pub bars: Option<Bars>,
    pub moves: Vec<Move>,
    /// A sentence: what building in bays does; empty where all frames stand at once.
    pub leapfrog: String,
    pub strings: Vec<StringRow>,
    /// The highest string first, as it is read on the frame.
    pub top: String,
    pub string: StringToBring,
}

/// One frame.
#[derive(Debug, Clone, Serialize, TS)]
#[ts(rename = "WrittenFrameRow")]
#[allow(missing_docs)]
pub struct Row {
    pub number: usize,
    pub station: String,
    /// Level of the ground on the centre line.
    pub ground: String,
    pub left_offset: String,
    pub right_offset: String,
    pub base_width: String,
    pub left_rise: String,
    pub right_rise: String,
    /// A level board has equal rises here.
    pub level_across: bool,
}

/// What lies between two neighbouring frames.
#[derive(Debug, Clone, Serialize, TS)]
#[ts(rename = "WrittenBay")]
#[allow(missing_docs)]
pub struct BayRow {
    /// The frames it lies between, counted from 1.
    pub from: usize,
    pub to: usize,
    pub length: String,
    pub left_taped: String,
    pub right_taped: String,
    pub left_to_right: String,
    pub right_to_left: String,
    /// Both diagonals read the same, so that equal ones show a bay set square.
    pub diagonals_alike: bool,
    /// The longest string of each face with its tails.
    pub left_string: String,
    pub right_string: String,
}

/// One arc, and how the string keeps to it.
#[derive(Debug, Clone, Serialize, TS)]
#[ts(rename = "WrittenCurve")]
#[allow(missing_docs)]
pub struct CurveRow {
    pub from: String,
    pub to: String,
    pub radius: String,
    pub turn: String,
    pub bay: String,
    pub left_bow: String,
    pub right_bow: String,
    pub tolerance: String,
    pub spacing_for_tolerance: String,
    pub too_far: bool,
}

/// The bars and the boards that join them.
#[derive(Debug, Clone, Serialize, TS)]
#[ts(rename = "WrittenBars")]
#[allow(missing_docs)]
pub struct Bars {
    pub count: usize,
    /// The stock length chosen; empty if none is long enough.
    pub length: String,
    pub needed: String,
    pub size: String,
    pub mass: String,
    pub embedment: String,
    pub projection: String,
    /// From the middle of one eye of the board to the middle of the other.
    pub eyes: String,
    /// How wide an eye is.
    pub eye: String,
    pub board_length: String,
    /// What a dug footing asks of the bars; empty where none is dug.
    pub trench: String,
}

/// One move of the leapfrog.
#[derive(Debug, Clone, Serialize, TS)]
#[ts(rename = "WrittenMove")]
#[allow(missing_docs)]
pub struct Move {
    pub frame: usize,
    pub from: String,
    pub to: String,
    pub built_to: String,
}

/// A height of the string.
#[derive(Debug, Clone, Serialize, TS)]
#[ts(rename = "WrittenString")]
pub struct StringRow {
    /// Above the ground at station 0.
    pub height: String,
    /// Between the faces.
    pub width: String,
    /// Under the board: what is measured down where the ground is not level.
    pub below_board: String,
    /// A row of throughs lies here.
    pub throughs: bool,
    /// The top, where the cope begins.
    pub top: bool,
}

/// The string to bring.
#[derive(Debug, Clone, Serialize, TS)]
#[ts(rename = "WrittenStringToBring")]
#[allow(missing_docs)]
pub struct StringToBring {
    pub total: String,
    pub tail: String,
    pub sag: String,
}

impl Frames {
    pub(super) fn of(plan: &Plan, course: &Course) -> Self {
        let show = |length| show_mark(length, course.units);
        let (frames, string) = (&plan.frames, &plan.fittings.string);
        Self {
            count: frames.rows.len(),
            sets: frames.sets,
            short: frames.short,
            end_profiles: frames.end_profiles,
            bay: show(frames.bay()),
            rows: frames
                .rows
                .iter()
                .enumerate()
                .map(|(at, row)| Row::of(at, row, course.units))
                .collect(),
            sloping: !plan.wall.ground.is_level(),
            bays: bays(plan, course.units),
            curves: curves(plan, course),
            bars: bars(plan, course),
            moves: frames
                .moves
                .iter()
                .map(|one| Move {
                    frame: one.frame,
                    from: show(one.from),
                    to: show(one.to),
                    built_to: show(one.built_to),
                })
                .collect(),
            leapfrog: leapfrog(plan, course.units),
            strings: strings(plan, course),
            top: show(plan.section.height()),
            string: StringToBring {
                total: show_length(string.total, course.units),
                tail: show(string.tail),
                sag: show_small(string.sag, course.units),
            },
        }
    }
}

impl Row {
    fn of(at: usize, row: &FrameRow, units: Units) -> Self {
        let show = |length| show_mark(length, units);
        Self {
            number: at + 1,
            station: show(row.station),
            ground: show(row.ground),
            left_offset: show(row.left_offset),
            right_offset: show(row.right_offset),
            base_width: show(row.base_width()),
            left_rise: show(row.left_rise),
            right_rise: show(row.right_rise),
            level_across: row.is_level_across(),
        }
    }
}

fn bays(plan: &Plan, units: Units) -> Vec<BayRow> {
    let (bays, string) = (&plan.frames.bays, &plan.fittings.string);
    let frames = plan.frames.rows.len();
    bays.iter()
        .zip(&string.bays)
        .enumerate()
        .map(|(at, (bay, strings))| {
            bay_row((at, (at + 1) % frames), bay, *strings, string.tail, units)
        })
        .collect()
}

fn bay_row(
    (from, to): (usize, usize),
    bay: &Bay,
    strings: [Length; 2],
    tail: Length,
    units: Units,
) -> BayRow {
    let show = |length| show_mark(length, units);
    let [left_string, right_string] = strings.map(|it| show_length(it + tail * 2.0, units));
    BayRow {
        from: from + 1,
        to: to + 1,
        length: show(bay.length),
        left_taped: show(bay.taped[0]),
        right_taped: show(bay.taped[1]),
        left_to_right: show(bay.diagonals[0]),
        right_to_left: show(bay.diagonals[1]),
        diagonals_alike: (bay.diagonals[0] - bay.diagonals[1]).si().abs() < 5e-4,
        left_string,
        right_string,
    }
}

fn curves(plan: &Plan, course: &Course) -> Vec<CurveRow> {
    let show = |length| show_mark(length, course.units);
    let small = |length| show_small(length, course.units);
    plan.fittings
        .curves
        .iter()
        .map(|curve| CurveRow {
            from: show(curve.from),
            to: show(curve.to),
            radius: show(curve.bend.radius),
            turn: curve.bend.turn.word().to_owned(),
            bay: show(curve.bay),
            left_bow: small(curve.bow[0]),
            right_bow: small(curve.bow[1]),
            tolerance: small(course.frames.tolerance),
            spacing_for_tolerance: show(curve.spacing_for_tolerance),
            too_far: curve.too_far,
        })
        .collect()
}

fn strings(plan: &Plan, course: &Course) -> Vec<StringRow> {
    let show = |length| show_mark(length, course.units);
    let same = |a: Length, b: Length| (a - b).si().abs() < 1e-9;
    plan.frames
        .strings
        .iter()
        .map(|one| StringRow {
            height: show(one.height),
            width: show(one.width),
            below_board: show(plan.section.height() - one.height),
            throughs: course
                .wall
                .through_rows
                .iter()
                .any(|row| same(*row, one.height)),
            top: same(one.height, plan.section.height()),
        })
        .collect()
}

fn bars(plan: &Plan, course: &Course) -> Option<Bars> {
    let show = |length| show_mark(length, course.units);
    let (bars, board) = (plan.frames.bars.as_ref()?, plan.fittings.board?);
    Some(Bars {
        count: bars.count,
        length: bars.chosen.map(stock_length).unwrap_or_default(),
        needed: show(bars.needed),
        size: course.frames.bar.clone(),
        mass: bars
            .mass
            .map(|mass| show_mass(mass, course.units))
            .unwrap_or_default(),
        embedment: show(course.frames.embedment),
        projection: show(course.frames.projection),
        eyes: show(board.eyes),
        eye: show_small(board.eye, course.units),
        board_length: show(board.length),
        trench: trench(plan, course.units),
    })
}

/// What a dug footing asks of the bars.
fn trench(plan: &Plan, units: Units) -> String {
    let show = |length| show_mark(length, units);
    let Some(trench) = plan.fittings.trench else {
        return String::new();
    };
    let grips = format!(
        "Only what is below the trench grips: {} of each bar.",
        show(trench.grip)
    );
    if !trench.through_footing {
        return format!("The bars stand at the edge of the trench. {grips}");
    }
    format!(
        "The bars stand where the footing will be: leave a gap {} wide in it at each bar, {} in all. {grips}",
        show_small(trench.gap, units),
        trench.gaps
    )
}

/// What building in bays does to the work.
fn leapfrog(plan: &Plan, units: Units) -> String {
    plan.leapfrog.map_or_else(String::new, |it| {
        let places = if it.pairs < it.of_pairs {
            format!(
                " {} of {} pairs find a place there at a time; the others sort, heart and carry. The forecast reckons with it.",
                it.pairs, it.of_pairs
            )
        } else {
            " All pairs find a place there.".to_owned()
        };
        let bars = match plan.frames.bars {
            Some(_) => format!(" ({} bars with their caps)", 2 * it.in_use),
            None => String::new(),
        };
        format!(
            "{} frames stand at a time{bars} and span {} of the wall.{places}",
            it.in_use,
            show_length(it.room, units)
        )
    })
}

/// A stock length is called what it is sold as: `6 ft` where it is whole feet, else metres.
fn stock_length(length: Length) -> String {
    let feet = length.si() / craft::quantity::FOOT_M;
    let whole_feet = (feet - feet.round()).abs() < 1e-6;
    show_length(
        length,
        if whole_feet {
            Units::Imperial
        } else {
            Units::Metric
        },
    )
}
