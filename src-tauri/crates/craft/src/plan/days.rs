//! What there is to know of the days beside their timetable: work, weather, people, who does what.

use super::{Built, LAYING, Planner, StageWork};
use crate::course::WallKind;
use crate::pace::fixed::Timed;
use crate::pace::programme::Programme;
use crate::pace::shut::Shut;
use crate::people::{self, DayPeople, LayingStage, Rotation, rotation, unmet};
use crate::quantity::steps_to_cover;
use crate::weather::DayWeather;

/// The days of a course.
#[derive(Debug, Clone, PartialEq)]
pub struct Days {
    /// What stands at fixed times, and the wishes that can't be had.
    pub timed: Timed,
    /// When nothing is built although the day runs.
    pub shut: Vec<Shut>,
    /// The weather of each day, from what was typed in.
    pub weather: Vec<DayWeather>,
    /// Each day's people.
    pub people: Vec<DayPeople>,
    /// Who does what at each stage.
    pub rotation: Rotation,
    /// Wishes about pairs that can't be had.
    pub unmet: Vec<people::Unmet>,
    /// Working minutes of each day, as much as gets done in them.
    pub working: Vec<f64>,
}

impl Planner<'_> {
    pub(super) fn days(&self, built: &Built, programme: &Programme) -> Days {
        let course = &*self.course;
        let stints = people::stints(&course.group, built.length, &self.pace, LAYING);
        let laying: Vec<LayingStage> = programme
            .steps
            .iter()
            .map(|step| LayingStage {
                id: self.tables.stages[step.stage].id.clone(),
                minutes: step.usual.iter().sum::<f64>() / programme.bays as f64,
            })
            .collect();
        let crews = steps_to_cover(built.length, self.pace.places.coping_crew);
        let pairs: Vec<_> = stints.iter().map(|stint| stint.members.clone()).collect();
        let ends = course.wall.ends;
        let ends = if built.wall.is_ring() {
            [crate::course::End::Joined; 2]
        } else {
            ends
        };
        let bank = match &course.wall.kind {
            WallKind::Retaining(bank) => Some(bank.side),
            WallKind::Freestanding => None,
        };
        Days {
            timed: self.time.timed.clone(),
            shut: self.time.shut.clone(),
            weather: course
                .days
                .iter()
                .map(|day| DayWeather::of(&day.weather, &self.tables.weather, course.units))
                .collect(),
            people: people::days(course, built.length, &self.pace, LAYING),
            rotation: rotation(&stints, &laying, ends, crews.max(1), bank),
            unmet: unmet(&pairs),
            working: (0..course.days.len())
                .map(|day| self.time.calendar.working_on(day))
                .collect(),
        }
    }

    /// The stages there is work for.
    pub(super) fn work(&self, built: &Built) -> Vec<StageWork> {
        let (amounts, gang) = (self.amounts(built), self.gang(built));
        self.tables
            .stages
            .iter()
            .enumerate()
            .map(|(stage, row)| {
                let amount = amounts.of(row);
                StageWork {
                    stage,
                    amount,
                    hours: gang.clock_hours(row, amount),
                    at_once: gang.at_once(row),
                }
            })
            .filter(|work| 0.0 < work.hours)
            .collect()
    }
}
