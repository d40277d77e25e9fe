//! The reports of the day, each with the wall it was told of.

use super::{Built, Planner};
use crate::Error;
use crate::course::{Report, WallSize};
use crate::pace::built::{Chapter, Told};
use crate::pace::calendar::minutes_to;
use crate::pace::programme::Programme;
use crate::pace::whole::Whole;
use crate::quantity::metres;
use std::rc::Rc;

impl Planner<'_> {
    /// A programme, and how it lies along what is built.
    pub(super) fn whole(&self, built: &Built, programme: Programme) -> Whole {
        let rows = built.frames.rows.iter().map(|row| row.station);
        let mut stations: Vec<_> = rows.collect();
        if stations.len() < 2 {
            stations = vec![metres(0.0), built.length];
        }
        let amounts = self.amounts(built);
        let steps = programme.steps.iter();
        let dense = steps.map(|step| amounts.to_the_metre(&self.tables.stages[step.stage]));
        Whole {
            dense: dense.collect(),
            stations,
            programme,
        }
    }

    /// The walls that were told of and are not the `whole` as it is now, each with its size.
    pub(super) fn as_told(&self, whole: &Whole) -> Result<Vec<(WallSize, Whole)>, Error> {
        let now = self.size_of(whole);
        let mut walls: Vec<(WallSize, Whole)> = Vec::new();
        for (at, report) in self.course.running.progress.iter().enumerate() {
            if let Some(size) = report.wall
                && !size.is(&now)
                && !walls.iter().any(|(known, _)| known.is(&size))
            {
                walls.push((size, self.of_size(size).map_err(|why| not_told(at, &why))?));
            }
        }
        Ok(walls)
    }

    /// The reports in chapters: a new one begins where another wall is told of.
    pub(super) fn chapters<'w>(
        &self,
        walls: &'w [(WallSize, Whole)],
        now: &'w Whole,
    ) -> Result<Vec<Chapter<'w>>, Error> {
        let mut chapters: Vec<Chapter<'w>> = Vec::new();
        for (at, report) in self.course.running.progress.iter().enumerate() {
            let known = |size: WallSize| walls.iter().find(|(known, _)| known.is(&size));
            let whole = report.wall.and_then(known).map_or(now, |(_, whole)| whole);
            let told = self.told(at, report, &whole.programme)?;
            match chapters.last_mut() {
                Some(chapter) if std::ptr::eq(chapter.whole, whole) => chapter.told.push(told),
                _ => chapters.push(Chapter {
                    whole,
                    told: vec![told],
                }),
            }
        }
        Ok(chapters)
    }

    fn size_of(&self, whole: &Whole) -> WallSize {
        let end = whole.stations.last().copied();
        self.course.wall.size(end.unwrap_or(metres(0.0)))
    }

    /// The wall of another size, all else as the course has it now.
    fn of_size(&self, size: WallSize) -> Result<Whole, Error> {
        let mut course = self.course.clone().into_owned();
        course.wall = course.wall.of_size(size);
        let planner = self.on_the_same_days(course, Rc::clone(&self.time))?;
        let built = planner.build(size.length)?;
        Ok(planner.whole(&built, planner.programme(&built)))
    }

    fn told(&self, at: usize, report: &Report, programme: &Programme) -> Result<Told, Error> {
        let (days, stages) = (&self.course.days, &self.tables.stages);
        let steps = &mut programme.steps.iter();
        let step = steps.position(|step| stages[step.stage].id == report.stage);
        let known = || {
            programme
                .steps
                .iter()
                .map(|step| stages[step.stage].id.clone())
        };
        let step = step.ok_or_else(|| Error::UnknownStage {
            key: format!("progress.{at}.stage"),
            what: "a stage this course has work for",
            given: report.stage.clone(),
            known: known().collect(),
        })?;
        if report.bay.is_some_and(|bay| programme.bays <= bay) {
            return Err(Error::NoSuchBay {
                at,
                bays: programme.bays,
                open: self.course.wall.length.is_none(),
            });
        }
        Ok(Told {
            clock: minutes_to(days, days[report.day].date, report.time),
            step,
            bay: report.bay,
            done: report.done,
        })
    }
}

fn not_told(at: usize, why: &Error) -> Error {
    Error::NoSuchWall {
        at,
        why: why.to_string(),
    }
}
