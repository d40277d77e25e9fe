//! Of a plan's numbers those the window goes by. All else it shows is written out, and every key press waits for
//! what is sent.

use crate::clock::{Clock, DateStyle};
use crate::plan::{self, Entry, Member, People, StageWork, Unmet};
use craft::course::Course;
use craft::plan::Plan;
use craft::tables::Tables;
use serde::Serialize;
use ts_rs::TS;

/// The numbers of a plan that the window counts, sorts and compares by; what has a shape in [`crate::plan::Plan`]
/// has it here.
#[derive(Debug, Clone, Serialize, TS)]
pub struct Numbers {
    /// How many students.
    pub students: usize,
    /// Who builds each stint.
    pub stints: Vec<Vec<Member>>,
    /// The bays that progress is told by.
    pub bays: usize,
    /// The stages there is work for.
    pub stages: Vec<StageWork>,
    /// Those the course itself builds, by their ids and in their order.
    pub building: Vec<String>,
    /// The days.
    pub timetable: Vec<Entry>,
    /// Wishes that can't be had.
    pub unmet: Vec<Unmet>,
}

impl Numbers {
    /// Of a plan.
    pub fn of(plan: &Plan, course: &Course, tables: &Tables) -> Self {
        let clock = Clock::new(course, DateStyle::British);
        let people = People::of(plan);
        Self {
            students: people.students,
            stints: people.stints.into_iter().map(|it| it.who).collect(),
            bays: plan.frames.bays_to_build(),
            stages: plan::stages(plan, tables),
            building: building(plan, tables),
            timetable: plan::timetable(plan, tables, &clock),
            unmet: plan::unmet(plan, course, tables, &clock),
        }
    }
}

fn building(plan: &Plan, tables: &Tables) -> Vec<String> {
    let stages = plan.forecast.by_stage.iter();
    stages
        .filter_map(|times| tables.stages.get(times.stage))
        .map(|stage| stage.id.clone())
        .collect()
}
