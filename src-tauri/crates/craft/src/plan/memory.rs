//! What a plan takes over from the one before: slow to reckon, and mostly the same after a key
//! press. A plan is the same with it and without.

use super::Planner;
use crate::course::Venue;
use crate::pace::belief::Belief;
use crate::pace::luck::Luck;
use crate::sun::SunDay;
use crate::tables::Stage;
use chrono::NaiveDate;
use std::collections::BTreeMap;
use std::sync::Arc;

/// What was reckoned for the last plan.
#[derive(Debug, Default)]
pub struct Memory {
    /// The place the sun was looked up at, and each date that was.
    suns: Option<(Venue, BTreeMap<NaiveDate, SunDay>)>,
    luck: Option<Drawn>,
}

/// The luck of the simulated courses, and all it was drawn from but the number of bays.
#[derive(Debug)]
struct Drawn {
    seed: u64,
    belief: Belief,
    strings: Vec<bool>,
    luck: Arc<Luck>,
}

impl Memory {
    /// The sun at this venue, as far as it is known.
    pub(super) fn suns(&self, venue: &Venue) -> BTreeMap<NaiveDate, SunDay> {
        let known = self.suns.as_ref().filter(|(at, _)| at == venue);
        known.map_or_else(BTreeMap::new, |(_, suns)| suns.clone())
    }

    /// The luck drawn from just this, if it was.
    pub(super) fn luck(&self, seed: u64, belief: &Belief, stages: &[Stage]) -> Option<Arc<Luck>> {
        let drawn = self.luck.as_ref()?;
        let same = drawn.seed == seed
            && drawn.belief == *belief
            && drawn.strings.iter().copied().eq(strings(stages));
        same.then(|| Arc::clone(&drawn.luck))
    }

    /// Keeps what a plan has reckoned.
    pub(super) fn keep(&mut self, planner: &Planner<'_>) {
        let (time, course) = (&planner.time, &planner.course);
        self.suns = Some((course.venue.clone(), time.suns.known()));
        self.luck = time.chances.drawn().map(|luck| Drawn {
            seed: course.seed,
            belief: time.chances.belief.clone(),
            strings: strings(&planner.tables.stages).collect(),
            luck,
        });
    }
}

fn strings(stages: &[Stage]) -> impl Iterator<Item = bool> {
    stages.iter().map(|stage| stage.string)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::course::Course;
    use crate::plan::sample::{course, tables};
    use crate::plan::{Asked, again, plan};
    use crate::quantity::metres;

    /// A memory of each of these in turn changes no plan, whatever came before: another length
    /// with more bays, another seed, another venue, other dates.
    #[test]
    fn a_plan_is_the_same_with_a_memory_and_without() {
        let tables = tables();
        let changed = |change: fn(&mut Course)| {
            let mut course = course();
            change(&mut course);
            course
        };
        let courses = [
            changed(|_| {}),
            changed(|it| it.wall.length = Some(metres(24.0))),
            changed(|_| {}),
            changed(|it| it.seed += 1),
            changed(|it| it.venue.latitude += 5.0),
            changed(|it| {
                it.days.pop();
            }),
            changed(|_| {}),
        ];
        let mut memory = Memory::default();
        for course in courses {
            let anew = plan(&course, &tables);
            assert_eq!(again(&course, &tables, Asked::Advice, &mut memory), anew);
        }
    }
}
