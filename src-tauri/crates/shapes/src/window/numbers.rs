//! Of a plan's numbers those the window goes by. All else it shows is written out, and every key press waits for
//! what is sent.

use crate::clock::{Clock, DateStyle};
use crate::plan::{self, Entry, Finish, Frames, People, StageWork, Unmet};
use craft::course::Course;
use craft::plan::Plan;
use craft::tables::Tables;
use serde::Serialize;
use ts_rs::TS;

/// The numbers of a plan that the window counts, sorts and compares by, each as [`crate::plan::Plan`] has it.
#[derive(Debug, Clone, Serialize, TS)]
pub struct Numbers {
    /// The setting-out: its bays are counted.
    pub frames: Frames,
    /// Who builds where.
    pub people: People,
    /// The stages there is work for.
    pub stages: Vec<StageWork>,
    /// The days.
    pub timetable: Vec<Entry>,
    /// The chance of finishing: the stages in their order.
    pub finish: Finish,
    /// Wishes that can't be had.
    pub unmet: Vec<Unmet>,
}

impl Numbers {
    /// Of a plan.
    pub fn of(plan: &Plan, course: &Course, tables: &Tables) -> Self {
        let clock = Clock::new(course, DateStyle::British);
        Self {
            frames: Frames::of(plan, course.frames.kind),
            people: People::of(plan),
            stages: plan::stages(plan, tables),
            timetable: plan::timetable(plan, tables, &clock),
            finish: Finish::of(&plan.forecast, tables, &clock),
            unmet: plan::unmet(plan, course, tables, &clock),
        }
    }
}
