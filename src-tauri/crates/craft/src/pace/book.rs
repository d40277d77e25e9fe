//! The pace book: what an instructor's recorded courses tell of the next one.
//!
//! The log slowness of stage s on course j is taken to be `A + B_s + C_j + S_js`: what the
//! instructor brings along, to all stages and to this one, and what is new on each course, again
//! for all stages and for this one. Records teach A + B_s; C_j and S_js are drawn in for the
//! record that they belong to and dropped again after it. The next course gets new ones.

use super::belief::{Belief, between, has_pace};
use super::evidence::{ABSURD, reading_variance, slowest_pair};
use crate::tables::{PaceSpread, PaceTable, Stage};
use nalgebra::DMatrix;

/// What was written down of one course.
#[derive(Debug, Clone, PartialEq)]
pub struct Record {
    /// The course's title, for what a person reads.
    pub course: String,
    /// The stages whose time is known.
    pub stages: Vec<StageRecord>,
}

/// How long one stage of a course took.
#[derive(Debug, Clone, PartialEq)]
pub struct StageRecord {
    /// The stage's id.
    pub stage: String,
    /// Working minutes that what was built takes by the pace table, beginners' slower first
    /// hours included, before any pace book.
    pub usual_minutes: f64,
    /// Working minutes that it took, lessons and breaks taken out.
    pub taken_minutes: f64,
    /// How many pairs a string tied together; `None` where nobody waited for one.
    pub tied: Option<f64>,
}

/// A recorded pace that no group has.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[error(
    "\"{course}\": the stage \"{stage}\" is said to have taken {taken_minutes} minutes where {usual_minutes} are usual. It takes between a tenth of its usual time and ten times as long: look for a slip of the pen, or leave the stage out."
)]
pub struct Absurd {
    /// The course's title.
    pub course: String,
    /// The stage's id.
    pub stage: String,
    /// What is usual.
    pub usual_minutes: f64,
    /// What is said to have been.
    pub taken_minutes: f64,
}

impl Record {
    /// Whether every stage was built at a pace that a group can have.
    ///
    /// # Errors
    /// [`Absurd`] for the first that was not.
    pub fn check(&self) -> Result<(), Absurd> {
        let sound = |row: &&StageRecord| {
            let slowness = row.taken_minutes / row.usual_minutes;
            0.0 < row.usual_minutes && (ABSURD.recip()..=ABSURD).contains(&slowness)
        };
        match self.stages.iter().find(|row| !sound(row)) {
            None => Ok(()),
            Some(row) => Err(Absurd {
                course: self.course.clone(),
                stage: row.stage.clone(),
                usual_minutes: row.usual_minutes,
                taken_minutes: row.taken_minutes,
            }),
        }
    }
}

/// What is believed of an instructor's own usual pace.
#[derive(Debug, Clone, PartialEq)]
pub struct Book {
    stages: Vec<Stage>,
    spread: PaceSpread,
    /// Of A + B_s, for each row of the stage table.
    usual: Belief,
    /// Of C + S_s: what is new on each course.
    new: DMatrix<f64>,
}

/// One rate before the records and after them.
#[derive(Debug, Clone, PartialEq)]
pub struct BookRate {
    /// The stage's id.
    pub stage: String,
    /// Person-hours for one unit of the stage's work by the pace table: novice, improver,
    /// experienced.
    pub before_hours: [f64; 3],
    /// The same as the records have it.
    pub after_hours: [f64; 3],
    /// Standard deviation of the log of the next course's pace, before the records.
    pub before_spread: f64,
    /// The same after them.
    pub after_spread: f64,
}

impl Book {
    /// What the records tell, in whatever order they stand. Stages that the table does not hold
    /// (any more), or that have a fixed time, tell nothing.
    ///
    /// # Errors
    /// [`Absurd`] for a pace that no group has; nothing is learned then.
    pub fn of(records: &[Record], stages: &[Stage], spread: &PaceSpread) -> Result<Self, Absurd> {
        let own = [spread.instructor, spread.instructor_stage].map(|it| it.powi(2));
        let rest = [
            spread.course.powi(2) - own[0],
            spread.stage.powi(2) - own[1],
        ]
        .map(|it| it.max(0.0));
        let unknown = Belief::of(
            nalgebra::DVector::zeros(stages.len()),
            between(stages, own[0], own[1]),
        );
        let mut book = Self {
            stages: stages.to_vec(),
            spread: spread.clone(),
            usual: unknown,
            new: between(stages, rest[0], rest[1]),
        };
        for record in records {
            record.check()?;
            book.learn(record);
        }
        Ok(book)
    }

    /// What is believed of the next course; without records that is [`Belief::built_in`].
    pub fn belief(&self) -> Belief {
        self.usual.with(&self.new)
    }

    /// Every rate of the table before the records and after them, in the table's order.
    pub fn rates(&self, table: &PaceTable) -> Vec<BookRate> {
        let before = Belief::built_in(&self.stages, &self.spread);
        let after = self.belief();
        let place = |id: &str| self.stages.iter().position(|stage| stage.id == id);
        let rates = table.rates.iter();
        rates
            .filter_map(|rate| {
                let stage = place(&rate.stage)?;
                Some(BookRate {
                    stage: rate.stage.clone(),
                    before_hours: rate.hours,
                    after_hours: rate.hours.map(|hours| hours * after.mean(stage).exp()),
                    before_spread: before.variance(stage).sqrt(),
                    after_spread: after.variance(stage).sqrt(),
                })
            })
            .collect()
    }

    fn learn(&mut self, record: &Record) {
        let count = self.stages.len();
        let mut both = self.usual.beside(&self.new);
        for row in &record.stages {
            let known = |stage: &Stage| stage.id == row.stage && has_pace(stage);
            let Some(stage) = self.stages.iter().position(known) else {
                continue;
            };
            let mut weights = vec![0.0; 2 * count];
            weights[stage] = 1.0;
            weights[count + stage] = 1.0;
            let mut value = (row.taken_minutes / row.usual_minutes).ln();
            let mut variance = reading_variance(row.taken_minutes, &self.spread);
            if let Some(pairs) = row.tied {
                let slowest = slowest_pair(pairs, self.spread.pair);
                value -= slowest.mean;
                variance += slowest.variance;
            }
            both.observe(&weights, value, variance);
        }
        self.usual = both.first(count);
    }
}

#[cfg(test)]
mod calibration;
#[cfg(test)]
mod tests;
