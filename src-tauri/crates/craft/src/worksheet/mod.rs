//! Worksheets: questions with each student's own numbers, answered by the plan's own sums.
//!
//! A sheet depends on the course's seed, its units and level and the student's place in the
//! group. Three kinds ask about a table and change with it (stages, hazards, lifting), one reads
//! the course's own frames and one names the parts of its wall. Whatever else of the course or
//! the tables changes, a sheet printed again is the same.
//! Neighbours (places n and n + 1) never hold the same question, because one draws from the odd
//! places of a list and the other from the even ones; only the parts to be named are everybody's,
//! since there is one wall.
//!
//! The lists of numbers are those of usual field walls (common practice, no source). No
//! question works anything out itself: it asks [`crate::wall`], [`crate::frames`],
//! [`crate::stone`], [`crate::lifting`] or [`crate::stonework`].
//!
//! - `kind`, `given`: the kinds, and which of them a course asks at which level
//! - `draw`, `scale`, `wall`: a student's luck, the measure numbers are written in, and the walls
//!   that questions are about
//! - a module for each subject, with the usual level; `easy` and `hard` hold the other two levels
//!   of the sums

mod batter;
mod draw;
mod easy;
mod fault;
mod given;
mod hard;
mod hazards;
mod kind;
mod leapfrog;
mod lift;
mod order;
mod read_table;
mod scale;
mod setting_out;
mod square;
mod stone;
mod throughs;
mod uneven;
mod wall;
mod widths;

#[cfg(test)]
pub(crate) mod sample;
#[cfg(test)]
mod tests;

pub use fault::{FaultWall, Grid, fault_wall};
pub use given::{Level, WorksheetsGiven};
pub use kind::Kind;

use crate::course::Course;
use crate::frames::Frames;
use crate::tables::Tables;
use draw::Draw;
use scale::Scale;

/// One question, with all that the instructor's key says about it.
#[derive(Debug, Clone, PartialEq)]
pub struct Question {
    /// What it is about.
    pub kind: Kind,
    /// What the student reads.
    pub ask: String,
    /// The formula in words and with this question's numbers, one step to a line.
    pub working: String,
    /// The answer as a person writes it.
    pub answer: String,
    /// How far off is still right.
    pub tolerance: String,
    /// The first number of the answer: metres, kilograms or a count; 0 where it is none.
    pub value: f64,
    /// What is to be put in order or chosen from: the first is A, the next B. Else empty.
    pub choices: Vec<String>,
    /// What each gets one of the choices: the first is 1, the next 2. Else empty.
    pub prompts: Vec<String>,
    /// The table the answer is read from.
    pub table: Option<Table>,
    /// The face the faults are looked for in.
    pub wall: Option<FaultWall>,
}

impl Question {
    /// A question of this kind with nothing in it yet.
    fn of(kind: Kind) -> Self {
        Self {
            kind,
            ask: String::new(),
            working: String::new(),
            answer: String::new(),
            tolerance: EXACT.to_owned(),
            value: 0.0,
            choices: Vec::new(),
            prompts: Vec::new(),
            table: None,
            wall: None,
        }
    }
}

/// The tolerance of what is right or wrong.
const EXACT: &str = "exact";

/// A small table as it is printed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Table {
    /// What stands over each column.
    pub head: Vec<String>,
    /// The rows, as many cells in each as the head has; the first names the row.
    pub rows: Vec<Vec<String>>,
}

/// What the sheets of a course are drawn from.
#[derive(Debug, Clone, Copy)]
pub struct Asked<'a> {
    /// The course: its seed, its units and what it asks of its worksheets.
    pub course: &'a Course,
    /// The tables.
    pub tables: &'a Tables,
    /// The course's own setting-out, for the one kind that reads its table.
    pub frames: &'a Frames,
    /// Where faces with faults come from: [`fault_wall`], or what remembers what that made. Each
    /// takes some milliseconds, and is the same as long as seed and level are.
    pub fault_wall: fn(u64, Level, usize) -> Option<FaultWall>,
}

/// The sheet of one student, counted from 0: the kinds the course asks, in their order.
///
/// A kind the tables have nothing for is left out: an order of work needs two stages, a
/// frame needs a bar.
pub fn sheet(asked: &Asked<'_>, student: usize) -> Vec<Question> {
    let kinds = asked.course.worksheets.kinds().into_iter();
    kinds
        .filter_map(|kind| question(kind, asked, student))
        .collect()
}

/// One question of one student's sheet. It is the same whichever others are asked.
pub fn question(kind: Kind, asked: &Asked<'_>, student: usize) -> Option<Question> {
    let (course, tables) = (asked.course, asked.tables);
    let draw = &mut Draw::new(course.seed, student, kind);
    let scale = Scale::of(course.units);
    let level = course.worksheets.level_of(kind);
    let by_level = |easy: Ask, usual: Ask, hard: Ask| level.pick(easy, usual, hard);
    match kind {
        Kind::BaseWidth => {
            by_level(easy::widths::base, widths::ask_base, hard::widths::base)(draw, scale, tables)
        }
        Kind::WidthAtString => by_level(
            easy::widths::at_string,
            widths::ask_at_string,
            hard::widths::at_string,
        )(draw, scale, tables),
        Kind::GaugeOffset => by_level(easy::widths::gauge, widths::ask_gauge, hard::widths::gauge)(
            draw, scale, tables,
        ),
        Kind::FramesAndBars => by_level(
            easy::setting_out::frames_and_bars,
            setting_out::ask_frames_and_bars,
            hard::setting_out::frames_and_bars,
        )(draw, scale, tables),
        Kind::BarLength => by_level(
            easy::setting_out::bar_length,
            setting_out::ask_bar_length,
            hard::setting_out::bar_length,
        )(draw, scale, tables),
        Kind::Tonnes => by_level(
            easy::stone::to_order,
            stone::ask_to_order,
            hard::stone::to_order,
        )(draw, scale, tables),
        Kind::ThroughsAndCopes => by_level(
            easy::stone::throughs_and_copes,
            throughs::ask_throughs_and_copes,
            hard::throughs::throughs_and_copes,
        )(draw, scale, tables),
        Kind::OrderOfWork => {
            let before = student.checked_sub(1);
            let before = before.map(|student| Draw::new(course.seed, student, kind));
            order::order_of_work(draw, before, &tables.stages, level)
        }
        Kind::Batter => by_level(batter::plumb_line, batter::two_widths, batter::two_offsets)(
            draw, scale, tables,
        ),
        Kind::Leapfrog => leapfrog::leapfrog(draw, scale, tables, level),
        Kind::UnevenGround => uneven::marks(draw, scale, level),
        Kind::Squareness => by_level(
            square::right_angle,
            square::between_frames,
            square::on_a_slope,
        )(draw, scale, tables),
        Kind::NameTheParts => Some(Question {
            ask: "Write the name of each part beside its letter.".to_owned(),
            ..Question::of(kind)
        }),
        Kind::HazardAndControl => hazards::matches(draw, &tables.hazards_asked, level),
        Kind::FindTheFault => {
            let wall = (asked.fault_wall)(course.seed, level, student)?;
            Some(fault::find(wall, level, course.units))
        }
        Kind::OnePersonLift => lift::who_lifts(draw, scale, tables, level),
        Kind::ReadTheTable => read_table::read(draw, scale, asked.frames, level),
    }
}

/// A question drawn for one student.
type Ask = fn(&mut Draw, Scale, &Tables) -> Option<Question>;
