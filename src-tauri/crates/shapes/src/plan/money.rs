//! What a course costs and takes, as JSON.

use craft::money::BreakEven;
use serde::Serialize;

/// The sums of a course in its own currency.
#[derive(Debug, Clone, Serialize)]
pub struct Money {
    /// ISO 4217; null if it is not given.
    pub currency: Option<String>,
    /// One line for each price given.
    pub lines: Vec<CostLine>,
    /// All costs.
    pub total: f64,
    /// Shared among the students.
    pub per_head: f64,
    /// All fees; null if no fee is given.
    pub income: Option<f64>,
    /// Fees less costs.
    pub left: Option<f64>,
    /// The least number of students whose fees cover the costs; null if none do, or no fee
    /// is given.
    pub break_even: Option<usize>,
    /// First and last of the numbers above it that do not break even.
    pub but_not: Vec<(usize, usize)>,
    /// The same sums for groups of other sizes.
    pub by_size: Vec<GroupCost>,
}

/// One thing the course costs.
#[derive(Debug, Clone, Serialize)]
#[allow(missing_docs)]
pub struct CostLine {
    pub cost: String,
    pub how: String,
    pub amount: f64,
}

/// What a group of one size costs.
#[derive(Debug, Clone, Serialize)]
#[allow(missing_docs)]
pub struct GroupCost {
    pub students: usize,
    pub instructors: usize,
    pub loads: usize,
    pub total: f64,
    pub per_head: f64,
    pub left: Option<f64>,
}

impl Money {
    pub(super) fn of(money: &craft::money::Money) -> Self {
        let (break_even, but_not) = match &money.break_even {
            Some(BreakEven::From { least, but_not }) => (Some(*least), but_not.clone()),
            Some(BreakEven::Never) | None => (None, Vec::new()),
        };
        Self {
            currency: money.currency.clone(),
            lines: money
                .lines
                .iter()
                .map(|line| CostLine {
                    cost: line.cost.word().to_owned(),
                    how: line.how.clone(),
                    amount: line.amount,
                })
                .collect(),
            total: money.total,
            per_head: money.per_head,
            income: money.income,
            left: money.left,
            break_even,
            but_not,
            by_size: money
                .by_size
                .iter()
                .map(|it| GroupCost {
                    students: it.students,
                    instructors: it.instructors,
                    loads: it.loads,
                    total: it.total,
                    per_head: it.per_head,
                    left: it.left,
                })
                .collect(),
        }
    }
}
