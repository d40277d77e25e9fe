//! What a course costs, what it takes, and how many students it takes to break even.
//!
//! Sums are exact; amounts are rounded only where [`show_money`] writes them.

mod costs;
mod show;
#[cfg(test)]
mod tests;

pub use costs::Cost;
pub use show::show_money;

use crate::course::{Course, MoneyGiven};
use crate::stone::Stone;
use costs::Costs;

/// The most students that breaking even is looked for with: as many as a course file takes.
pub const MOST_STUDENTS: usize = 500;

/// Costs of a group of the least size that the table of sizes always reaches.
const ALWAYS_TO: usize = 12;

/// What a course costs and takes.
#[derive(Debug, Clone, PartialEq)]
pub struct Money {
    /// The three letters of the currency, if they are given.
    pub currency: Option<String>,
    /// What it costs, one line for each price given.
    pub lines: Vec<CostLine>,
    /// All costs.
    pub total: f64,
    /// All costs shared among the students.
    pub per_head: f64,
    /// All fees; nothing if no fee is given.
    pub income: Option<f64>,
    /// Fees less costs: below nothing, a loss.
    pub left: Option<f64>,
    /// With how many students the fees cover the costs; nothing if no fee is given.
    pub break_even: Option<BreakEven>,
    /// The same sums for groups of every size, from one student up.
    pub by_size: Vec<GroupCost>,
}

/// One thing the course costs.
#[derive(Debug, Clone, PartialEq)]
pub struct CostLine {
    /// What.
    pub cost: Cost,
    /// How the amount comes about, in words.
    pub how: String,
    /// How much.
    pub amount: f64,
}

/// With how many students the fees cover the costs.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum BreakEven {
    /// Costs rise in steps (a load more, an instructor more), so more students may cost more
    /// than they bring.
    From {
        /// The least number.
        least: usize,
        /// Stretches above it, first and last number, where the fees do not cover the costs;
        /// looked for up to [`MOST_STUDENTS`].
        but_not: Vec<(usize, usize)>,
    },
    /// With no number up to [`MOST_STUDENTS`].
    Never,
}

/// What a group of one size costs.
#[derive(Debug, Clone, PartialEq)]
pub struct GroupCost {
    /// Students.
    pub students: usize,
    /// Instructors they take.
    pub instructors: usize,
    /// Deliveries of stone.
    pub loads: usize,
    /// All costs.
    pub total: f64,
    /// Shared among the students.
    pub per_head: f64,
    /// Fees less costs, if a fee is given.
    pub left: Option<f64>,
}

impl Money {
    /// The sums of a course with so much stone; nothing where the course says nothing of
    /// money.
    ///
    /// For a group of another size stone grows in proportion where the length of the wall
    /// follows the group, whole loads at a time, and stays where the length is given; a
    /// larger group takes an instructor to every `students_per_instructor`, an assistant
    /// counting half, and never fewer than the course has. That is a first guess: the plan of
    /// the larger course may differ, because site, frames and hours have their say.
    pub fn of(course: &Course, stone: &Stone, students_per_instructor: f64) -> Option<Self> {
        let given = course.money.as_ref()?;
        let costs = Costs::of(course, given, stone, students_per_instructor);
        let students = course.group.students.len();
        let total = costs.total(students);
        let income = given.fee.map(|fee| fee * students as f64);
        let to = ALWAYS_TO.max(2 * students);
        Some(Self {
            currency: given.currency.clone(),
            lines: costs.lines(course),
            total,
            per_head: total / students as f64,
            income,
            left: income.map(|income| income - total),
            break_even: given.fee.map(|fee| break_even(&costs, fee)),
            by_size: (1..=to)
                .map(|size| group_cost(&costs, given, size))
                .collect(),
        })
    }

    /// An amount in the currency of the course.
    pub fn show(&self, amount: f64) -> String {
        show_money(amount, self.currency.as_deref())
    }
}

fn group_cost(costs: &Costs<'_>, given: &MoneyGiven, students: usize) -> GroupCost {
    let total = costs.total(students);
    GroupCost {
        students,
        instructors: costs.instructors(students),
        loads: costs.loads(students),
        total,
        per_head: total / students as f64,
        left: given.fee.map(|fee| fee * students as f64 - total),
    }
}

fn break_even(costs: &Costs<'_>, fee: f64) -> BreakEven {
    // A hair below nothing is rounding.
    let covers = |students: usize| -1e-9 <= fee * students as f64 - costs.total(students);
    let Some(least) = (1..=MOST_STUDENTS).find(|students| covers(*students)) else {
        return BreakEven::Never;
    };
    let mut but_not: Vec<(usize, usize)> = Vec::new();
    for students in (least..=MOST_STUDENTS).filter(|students| !covers(*students)) {
        match but_not.last_mut() {
            Some((_, last)) if *last + 1 == students => *last = students,
            _ => but_not.push((students, students)),
        }
    }
    BreakEven::From { least, but_not }
}
