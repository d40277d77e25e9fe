//! What a course costs and takes, in written figures.

use craft::money::{BreakEven, GroupCost, MOST_STUDENTS};
use craft::quantity::show_count;
use serde::Serialize;
use ts_rs::TS;

/// The sums of a course.
#[derive(Debug, Clone, Serialize, TS)]
#[ts(rename = "WrittenMoney")]
pub struct Money {
    /// One line for each price given.
    pub lines: Vec<CostLine>,
    /// All costs.
    pub total: String,
    /// Shared among the students.
    pub per_head: String,
    /// All fees; empty if no fee is given.
    pub income: String,
    /// Fees less costs; empty if no fee is given.
    pub left: String,
    /// With how many students it breaks even, as a sentence; empty if no fee is given.
    pub break_even: String,
    /// The same sums for groups of other sizes.
    pub by_size: Vec<GroupRow>,
}

/// One thing the course costs.
#[derive(Debug, Clone, Serialize, TS)]
#[ts(rename = "WrittenCostLine")]
#[allow(missing_docs)]
pub struct CostLine {
    pub cost: String,
    pub how: String,
    pub amount: String,
}

/// What a group of one size costs.
#[derive(Debug, Clone, Serialize, TS)]
#[ts(rename = "WrittenGroupRow")]
#[allow(missing_docs)]
pub struct GroupRow {
    pub students: usize,
    pub instructors: usize,
    pub loads: usize,
    pub total: String,
    pub per_head: String,
    pub left: String,
    /// It is the group of this course.
    pub this: bool,
}

impl Money {
    pub(super) fn of(money: &craft::money::Money, students: usize) -> Self {
        let show = |amount: f64| money.show(amount);
        let shown = |amount: Option<f64>| amount.map(show).unwrap_or_default();
        let row = |it: &GroupCost| GroupRow {
            students: it.students,
            instructors: it.instructors,
            loads: it.loads,
            total: show(it.total),
            per_head: show(it.per_head),
            left: shown(it.left),
            this: it.students == students,
        };
        Self {
            lines: money
                .lines
                .iter()
                .map(|line| CostLine {
                    cost: line.cost.word().to_owned(),
                    how: line.how.clone(),
                    amount: show(line.amount),
                })
                .collect(),
            total: show(money.total),
            per_head: show(money.per_head),
            income: shown(money.income),
            left: shown(money.left),
            break_even: money.break_even.as_ref().map(told).unwrap_or_default(),
            by_size: money.by_size.iter().map(row).collect(),
        }
    }
}

/// No more stretches that do not break even are named.
const GAPS: usize = 3;

fn told(break_even: &BreakEven) -> String {
    match break_even {
        BreakEven::Never => format!(
            "The fees do not cover the costs with any number of students up to {MOST_STUDENTS}."
        ),
        BreakEven::From { least, but_not } => {
            let students = show_count(*least, "student", "students");
            let gaps: Vec<String> = but_not
                .iter()
                .map(|(first, last)| {
                    if first == last {
                        first.to_string()
                    } else {
                        format!("{first} to {last}")
                    }
                })
                .collect();
            match gaps.get(..GAPS) {
                _ if gaps.is_empty() => format!(
                    "It breaks even from {students} on, by a first guess: plan it with that group to be sure."
                ),
                Some(first) if GAPS < gaps.len() => format!(
                    "It breaks even from {students} on, but not with {} and some numbers above: there a load or an instructor more is due. A first guess: plan it with that group to be sure.",
                    first.join(", ")
                ),
                _ => format!(
                    "It breaks even from {students} on, but not with {}: there a load or an instructor more is due.",
                    crate::clock::list(&gaps)
                ),
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn few_gaps_are_named_and_many_cut_short() {
        let from = |gaps: &[(usize, usize)]| {
            told(&BreakEven::From {
                least: 7,
                but_not: gaps.to_vec(),
            })
        };
        assert_eq!(
            from(&[]),
            "It breaks even from 7 students on, by a first guess: plan it with that group to be sure."
        );
        let three = from(&[(9, 9), (11, 12), (20, 22)]);
        assert!(
            three.contains("not with 9, 11 to 12 and 20 to 22: "),
            "{three}"
        );
        let four = from(&[(9, 9), (11, 12), (20, 22), (30, 30)]);
        assert!(
            four.contains("not with 9, 11 to 12, 20 to 22 and some numbers above: "),
            "{four}"
        );
    }
}
