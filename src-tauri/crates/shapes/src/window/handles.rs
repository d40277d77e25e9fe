//! What can be taken hold of in the drawings, as the window shows it over them.

use serde::Serialize;
use ts_rs::TS;

/// The handles of the drawings of a course.
#[derive(Debug, Clone, Serialize, TS)]
#[allow(missing_docs)]
pub struct Handles {
    pub section: Vec<Handle>,
    pub elevation: Vec<Handle>,
    pub timetable: DayHandles,
}

/// A value of the course file that can be dragged. Lengths are those of its drawing.
#[derive(Debug, Clone, Serialize, TS)]
pub struct Handle {
    /// What tells it from the other handles.
    pub id: String,
    /// The key it sets.
    pub key: String,
    /// What it is called: `Height of the wall`.
    pub name: String,
    /// It moves to the left and to the right; otherwise up and down.
    pub across: bool,
    /// Where it is: to the right, and down.
    pub at: (f64, f64),
    /// A place that stays where it is while this handle moves.
    pub fixed: (f64, f64),
    /// Millimetres of the drawing for a metre along its way: how large the drawing is.
    pub mm_per_m: f64,
    /// Where it can be moved to, from left to right or from below upwards.
    pub stops: Vec<HandleStop>,
    /// Which of them it is at.
    pub now: usize,
}

/// A value a handle can be moved to.
#[derive(Debug, Clone, Serialize, TS)]
pub struct HandleStop {
    /// What a person would type for it.
    pub typed: String,
    /// What a person would call it.
    pub words: String,
    /// Where it lies along the way the handle moves.
    pub place: f64,
}

/// What can be moved in the picture of the days.
#[derive(Debug, Clone, Serialize, TS)]
pub struct DayHandles {
    /// The rows of the days, in order.
    pub days: Vec<DayPlaces>,
    /// What can be moved in them: each lesson, each break of the file.
    pub entries: Vec<DayEntry>,
}

/// The row of one day.
#[derive(Debug, Clone, Serialize, TS)]
pub struct DayPlaces {
    /// `Day 1`.
    pub name: String,
    /// Its upper edge.
    pub top: f64,
    /// Its lower edge.
    pub bottom: f64,
    /// The quarters of an hour from its beginning to its end, from left to right.
    pub times: Vec<HandleStop>,
}

/// An entry of a day that can be moved.
#[derive(Debug, Clone, Serialize, TS)]
pub struct DayEntry {
    /// What tells it from the others.
    pub id: String,
    /// What it is called.
    pub name: String,
    /// The lesson that is wished elsewhere; null for a break.
    pub lesson: Option<String>,
    /// The key of a break's beginning; a break stays on its day. Null for a lesson.
    pub key: Option<String>,
    /// Its day, counted from 0.
    pub day: usize,
    /// Where it begins.
    pub from: f64,
    /// Where it ends.
    pub to: f64,
    /// When it begins, as it is typed: `10:30`.
    pub typed: String,
    /// The same as it is said.
    pub words: String,
}
