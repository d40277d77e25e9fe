//! The setting-out in written figures.

use craft::course::Course;
use craft::plan::Plan;
use craft::quantity::{Read, Units, show_length, show_mass};
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
    pub bay: String,
    /// Across one bay: inner face of a left bar to the inner face of the next right bar.
    pub diagonal: String,
    pub rows: Vec<Row>,
    pub bars: Bars,
    pub moves: Vec<Move>,
    pub strings: Vec<StringRow>,
    /// The highest string first, as it is read on the frame.
    pub top: String,
}

/// One frame.
#[derive(Debug, Clone, Serialize, TS)]
#[ts(rename = "WrittenFrameRow")]
#[allow(missing_docs)]
pub struct Row {
    pub number: usize,
    pub station: String,
    pub left_offset: String,
    pub right_offset: String,
    pub base_width: String,
    pub left_rise: String,
    pub right_rise: String,
}

/// The bars.
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
    /// Above the ground.
    pub height: String,
    /// Between the faces.
    pub width: String,
    /// A row of throughs lies here.
    pub throughs: bool,
    /// The top, where the cope begins.
    pub top: bool,
}

impl Frames {
    pub(super) fn of(plan: &Plan, course: &Course) -> Self {
        let show = |length| show_length(length, course.units);
        let frames = &plan.frames;
        Self {
            count: frames.rows.len(),
            sets: frames.sets,
            short: frames.short,
            end_profiles: frames.end_profiles,
            bay: show(frames.bay),
            diagonal: show(frames.diagonal()),
            rows: frames
                .rows
                .iter()
                .enumerate()
                .map(|(at, row)| Row {
                    number: at + 1,
                    station: show(row.station),
                    left_offset: show(row.left_offset),
                    right_offset: show(row.right_offset),
                    base_width: show(row.base_width()),
                    left_rise: show(row.left_rise),
                    right_rise: show(row.right_rise),
                })
                .collect(),
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
            strings: strings(plan, course),
            top: show(plan.section.height()),
        }
    }
}

fn strings(plan: &Plan, course: &Course) -> Vec<StringRow> {
    let show = |length| show_length(length, course.units);
    let same = |a: craft::quantity::Length, b: craft::quantity::Length| (a - b).si().abs() < 1e-9;
    plan.frames
        .strings
        .iter()
        .map(|one| StringRow {
            height: show(one.height),
            width: show(one.width),
            throughs: course
                .wall
                .through_rows
                .iter()
                .any(|row| same(*row, one.height)),
            top: same(one.height, plan.section.height()),
        })
        .collect()
}

fn bars(plan: &Plan, course: &Course) -> Bars {
    let show = |length| show_length(length, course.units);
    let bars = &plan.frames.bars;
    Bars {
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
    }
}

/// A stock length is called what it is sold as: `6 ft` where it is whole feet, else metres.
fn stock_length(length: craft::quantity::Length) -> String {
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
