//! Worksheets: questions with each student's own numbers, answered by the plan's own sums.
//!
//! A sheet depends on the course's seed, its units and the student's place in the group;
//! the order of work also on the table of stages. Whatever else of the course or the tables
//! changes, a sheet printed again is the same.
//! Neighbours (places n and n + 1) never hold the same numbers in a question of numbers,
//! because one draws from the odd places of a list and the other from the even ones.
//!
//! The lists of numbers are those of usual field walls (common practice, no source). No
//! question works anything out itself: it asks [`crate::wall`], [`crate::frames`] and
//! [`crate::stone`].

mod draw;
mod order;
mod scale;
mod setting_out;
mod stone;
mod throughs;
mod wall;
mod widths;

#[cfg(test)]
pub(crate) mod sample;
#[cfg(test)]
mod tests;

use crate::course::Course;
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
    /// The first number of the answer: metres, kilograms or a count; 0 for an order.
    pub value: f64,
    /// What is to be put in order: the first is A, the next B. Else empty.
    pub choices: Vec<String>,
}

/// What a question is about.
///
/// Each kind draws its numbers at a place of its own, by the order below. A new kind goes
/// at the end; where it stands on the sheet is for [`Kind::ALL`] to say.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kind {
    /// The width at the ground.
    BaseWidth,
    /// The width at a string.
    WidthAtString,
    /// The wide end of a batter gauge.
    GaugeOffset,
    /// Frames along a wall, and their bars.
    FramesAndBars,
    /// The bar that is long enough.
    BarLength,
    /// The stone to order.
    Tonnes,
    /// Throughs and copes, counted.
    ThroughsAndCopes,
    /// Stages put in order.
    OrderOfWork,
}

impl Kind {
    /// All kinds as they stand on a sheet, from easy to hard.
    pub const ALL: [Self; 8] = [
        Self::OrderOfWork,
        Self::GaugeOffset,
        Self::BaseWidth,
        Self::WidthAtString,
        Self::FramesAndBars,
        Self::ThroughsAndCopes,
        Self::BarLength,
        Self::Tonnes,
    ];

    /// A short, fixed name for programs. Never changes once shipped.
    pub fn code(self) -> &'static str {
        match self {
            Self::BaseWidth => "base-width",
            Self::WidthAtString => "width-at-string",
            Self::GaugeOffset => "gauge-offset",
            Self::FramesAndBars => "frames-and-bars",
            Self::BarLength => "bar-length",
            Self::Tonnes => "tonnes",
            Self::ThroughsAndCopes => "throughs-and-copes",
            Self::OrderOfWork => "order-of-work",
        }
    }

    /// What stands above the question.
    pub fn title(self) -> &'static str {
        match self {
            Self::BaseWidth => "Width at the ground",
            Self::WidthAtString => "Width at the string",
            Self::GaugeOffset => "Batter gauge",
            Self::FramesAndBars => "Frames and bars",
            Self::BarLength => "Length of a bar",
            Self::Tonnes => "Stone to order",
            Self::ThroughsAndCopes => "Throughs and copes",
            Self::OrderOfWork => "Order of work",
        }
    }
}

/// The sheet of one student, counted from 0: a question of each kind, from easy to hard.
///
/// A kind the tables have nothing for is left out: an order of work needs two stages, a
/// frame needs a bar.
pub fn sheet(course: &Course, tables: &Tables, student: usize) -> Vec<Question> {
    Kind::ALL
        .into_iter()
        .filter_map(|kind| question(kind, course, tables, student))
        .collect()
}

/// One question of one student's sheet. It is the same whichever others are asked.
pub fn question(kind: Kind, course: &Course, tables: &Tables, student: usize) -> Option<Question> {
    let mut draw = Draw::new(course.seed, student, kind);
    let scale = Scale::of(course.units);
    match kind {
        Kind::BaseWidth => widths::base(wall::Wall::draw(&mut draw, scale)?, scale),
        Kind::WidthAtString => widths::at_string(widths::AtString::draw(&mut draw, scale)?, scale),
        Kind::GaugeOffset => widths::gauge(widths::Gauge::draw(&mut draw, scale)?, scale),
        Kind::FramesAndBars => {
            let line = setting_out::Line::draw(&mut draw, scale)?;
            setting_out::frames_and_bars(line, scale, &tables.bars)
        }
        Kind::BarLength => {
            let frame = setting_out::Frame::draw(&mut draw, scale, &tables.bars)?;
            setting_out::bar_length(&frame, scale, &tables.bars)
        }
        Kind::Tonnes => {
            stone::to_order(stone::Order::draw(&mut draw, scale)?, scale, &tables.stone)
        }
        Kind::ThroughsAndCopes => throughs::throughs_and_copes(
            throughs::Top::draw(&mut draw, scale)?,
            scale,
            &tables.stone,
        ),
        Kind::OrderOfWork => order::order_of_work(&mut draw, &tables.stages),
    }
}
