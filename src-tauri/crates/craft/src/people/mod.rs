//! People at the wall: who builds with whom, the stint each pair builds, who is there when,
//! and who does what at each stage.

mod attended;
mod blocks;
mod days;
mod heads;
mod matching;
mod pairs;
mod presence;
mod rotation;
mod weights;

pub use attended::Attended;
pub use days::{Away, DayPeople, days};
pub use heads::Turn;
pub use pairs::{Unmet, pair_count, pairs, unmet};
pub use presence::{Presence, presence};
pub use rotation::{LAYING_STAGES, LayingStage, Place, Rotation, Round, Shift, rotation};

#[cfg(test)]
mod tests;

use crate::course::{Experience, Group, Student};
use crate::quantity::{Length, metres};
use crate::tables::PaceTable;

/// A pair (or three, or one alone) and its stretch of wall.
#[derive(Debug, Clone, PartialEq)]
pub struct Stint {
    /// Where it begins.
    pub from: Length,
    /// Where it ends.
    pub to: Length,
    /// Who builds it.
    pub members: Vec<Student>,
}

/// Facing places the group takes at the wall: half a person's place is a whole one.
pub fn facing_places(students: usize) -> usize {
    students.div_ceil(2)
}

/// Stints along the wall whose lengths follow the pace of their pairs, so that all finish
/// together. `laying` is the stage whose rates count.
pub fn stints(group: &Group, length: Length, pace: &PaceTable, laying: &str) -> Vec<Stint> {
    along(pairs(group, pace, laying), length, pace, laying)
}

/// A stint for each pair: `length · speed of the pair / speed of all`, in the pairs' order.
fn along(pairs: Vec<Vec<Student>>, length: Length, pace: &PaceTable, laying: &str) -> Vec<Stint> {
    let speeds: Vec<f64> = pairs
        .iter()
        .map(|pair| together(pair, pace, laying))
        .collect();
    let all: f64 = speeds.iter().sum();
    let mut from = metres(0.0);
    let last = pairs.len().saturating_sub(1);
    pairs
        .into_iter()
        .zip(speeds)
        .enumerate()
        .map(|(at, (members, speed))| {
            // The last stint ends where the wall ends, whatever the roundings before it.
            let to = if at == last {
                length
            } else {
                from + length * (speed / all)
            };
            let stint = Stint { from, to, members };
            from = to;
            stint
        })
        .collect()
}

/// What these people do of a stage's work in an hour hands-on.
fn together(people: &[Student], pace: &PaceTable, stage: &str) -> f64 {
    people
        .iter()
        .map(|student| speed(pace, stage, student.experience))
        .sum()
}

/// Units of a stage's work one person does in an hour hands-on. A stage without a rate is
/// refused before anything is worked out; it would count as 1.
pub fn speed(pace: &PaceTable, stage: &str, experience: Experience) -> f64 {
    let column = match experience {
        Experience::Novice => 0,
        Experience::Improver => 1,
        Experience::Experienced => 2,
    };
    pace.rates
        .iter()
        .find(|rate| rate.stage == stage)
        .map_or(1.0, |rate| 1.0 / rate.hours[column])
}
