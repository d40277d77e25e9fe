//! What has to be arranged, from the table: on which courses, and by which date.

use super::{Dates, Planned, ToDo};
use crate::course::Course;
use crate::quantity::kilograms;
use crate::tables::{Part, When};

/// The tasks of the table that matter for this course, in the table's order. Those about stone
/// that comes are left out where none does.
pub(super) fn arranged(course: &Course, planned: Planned<'_>, dates: &Dates) -> Vec<ToDo> {
    let Planned {
        ready,
        stone,
        retaining,
        conditions,
        ..
    } = planned;
    let drainage = retaining.map_or(kilograms(0.0), |it| it.backfill_mass);
    let comes = kilograms(0.0) < stone.to_deliver.high + drainage;
    ready
        .tasks
        .iter()
        .filter(|task| task.part != Part::Stone || comes)
        .filter(|task| conditions.met(task.applies))
        .map(|task| {
            let by = match task.when {
                When::DaysBefore(days) => dates.before(days),
                When::WorkingDaysBefore(days) => dates.working_days_before(days),
                When::DaysAfter(days) => dates.after(days),
            };
            ToDo::reminder(&task.id, task.part, task.text.clone(), course).by(by)
        })
        .collect()
}
