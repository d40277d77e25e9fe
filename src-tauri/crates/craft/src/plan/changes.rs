//! A course with one thing changed, to see what that would do.

use super::Planner;
use crate::course::Course;
use crate::quantity::{Length, metres};
use chrono::TimeDelta;

/// A course with one thing changed.
#[derive(Debug, Clone, PartialEq)]
pub enum Change {
    /// A stage is done by the instructor beforehand, by its place in its table.
    Beforehand(usize),
    /// Every day begins so many minutes earlier.
    EarlierStart(u32),
    /// Every day from this one on ends so many minutes later.
    LaterFinish(u32),
    /// One more day like the last.
    AnotherDay,
    /// One more instructor.
    AnotherInstructor,
    /// A lesson is left out, by its place in its table.
    WithoutLesson(usize),
    /// The wall is so much lower.
    Lower(Length),
    /// No cope is set.
    WithoutCope,
    /// One more set of frames.
    AnotherSet,
    /// Frames are moved along, bay by bay.
    Leapfrog,
    /// One more load of stone can be had.
    AnotherLoad,
}

/// Throughs must stay well below the top of a lower wall.
const ABOVE_THROUGHS_M: f64 = 0.2;

impl Change {
    /// The course so changed; nothing where it can't be.
    pub(super) fn made_to(&self, course: &Course, planner: &Planner<'_>) -> Option<Course> {
        let mut course = course.clone();
        match self {
            Self::Beforehand(stage) => {
                let id = planner.tables.stages.get(*stage)?.id.clone();
                course.running.beforehand.push(id);
            }
            Self::EarlierStart(minutes) => {
                for day in &mut course.days {
                    let (start, wraps) = day.start.overflowing_sub_signed(by(*minutes));
                    (wraps == 0).then_some(())?;
                    day.start = start;
                }
            }
            Self::LaterFinish(minutes) => {
                for day in &mut course.days {
                    let (finish, wraps) = day.finish.overflowing_add_signed(by(*minutes));
                    (wraps == 0).then_some(())?;
                    day.finish = finish;
                }
            }
            Self::AnotherDay => {
                let mut next = course.days.last()?.clone();
                next.date = next.date.succ_opt()?;
                course.days.push(next);
            }
            Self::AnotherInstructor => course.group.instructors += 1,
            Self::WithoutLesson(lesson) => {
                let id = planner.tables.lessons.get(*lesson)?.id.clone();
                course.running.left_out.push(id);
            }
            Self::Lower(by) => lower(&mut course, *by)?,
            Self::WithoutCope => {
                (metres(0.0) < course.wall.cope_height).then_some(())?;
                course.wall.cope_height = metres(0.0);
            }
            Self::AnotherSet => {
                let stock = course.frames.in_stock?;
                course.frames.in_stock = Some(stock + course.frames.set_size);
            }
            Self::Leapfrog => course.frames.leapfrog = true,
            Self::AnotherLoad => {
                course.stone.most = Some(course.stone.most? + course.stone.load?);
            }
        }
        Some(course)
    }
}

fn by(minutes: u32) -> TimeDelta {
    TimeDelta::minutes(minutes.into())
}

/// Never below the throughs: they tie both faces together, and a wall that ends below them is
/// another wall.
fn lower(course: &mut Course, by: Length) -> Option<()> {
    let height = course.wall.height - by;
    let highest = course.wall.through_rows.iter().copied();
    let highest = highest.fold(
        metres(0.0),
        |highest, row| {
            if highest < row { row } else { highest }
        },
    );
    (highest + metres(ABOVE_THROUGHS_M) <= height).then_some(())?;
    course.wall.height = height;
    Some(())
}
