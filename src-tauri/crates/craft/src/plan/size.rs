//! How long the wall is: every limit worked out, and the length they leave.

use super::advice::length_of;
use super::search::{Looked, longest_kept};
use super::{Built, Planner};
use crate::Error;
use crate::course::Course;
use crate::pace::SAMPLES;
use crate::pace::crew;
use crate::pace::forecast::{self, Forecast};
use crate::pace::programme::Programme;
use crate::pace::sizing::{
    self, Binding, Bound, Kept, LONGEST_M, Limit, Sizing, longest, rounded_down,
};
use crate::quantity::{FOOT_M, Length, Read, metres};
use crate::wall::{Line, Top, all_but_the_last_straight, total};
use std::rc::Rc;

/// How much lower a wall is tried where the time does not allow one so high.
const HEIGHT_STEP_M: f64 = 0.05;

/// The length that pace allows is a whole number of these, or of feet: what lengths are rounded down
/// to never lies between two. It is far below how surely that length is known.
const PACE_STEP_M: f64 = 0.01;
/// So many courses say about where it is.
const A_PART: usize = 500;
/// What those say may be off by this share: the spread of a chance told by so few.
const A_PART_OFF: f64 = 0.03;
/// A length that need only be about right is right to this share of it.
const ABOUT: f64 = 0.01;
/// A first guess may be off by this share.
const GUESS_OFF: f64 = 0.1;
/// How finely the length that the stone allows is searched; this costs next to nothing.
const STONE_FINENESS_M: f64 = 1e-6;

/// A wall that was sized.
pub(super) struct Sized {
    pub(super) sizing: Sizing,
    pub(super) built: Built,
    pub(super) programme: Programme,
    pub(super) forecast: Forecast,
}

impl Planner<'_> {
    /// The length with what it takes and its forecast. Frames, throughs and copes come in whole
    /// numbers, so that a rounded length could in rare cases fall on the wrong side of a step: it
    /// then gives way by one step more.
    pub(super) fn sized(&self) -> Result<Sized, Error> {
        self.build(self.tried_length())?;
        let mut sizing = self.sizing();
        let step = sizing::step(self.course.units);
        loop {
            let built = self.build(sizing.length)?;
            let programme = self.programme(&built);
            let forecast = self.time.forecast(&programme, &self.tables.stages);
            let by_pace = sizing.binding == Binding::Pace && sizing.kept.is_none();
            if by_pace && step * 1.5 < sizing.length && forecast.chance < self.course.chance {
                sizing.length = rounded_down(sizing.length - step, self.course.units);
                continue;
            }
            return Ok(Sized {
                sizing,
                built,
                programme,
                forecast,
            });
        }
    }

    /// All limits, and the length they leave.
    fn sizing(&self) -> Sizing {
        let room = Limit {
            limit: Binding::ElbowRoom,
            bound: Bound::Least,
            length: crew::elbow_room(&self.course.group, &self.pace),
        };
        let most = [
            (Binding::Pace, Some(self.pace_limit())),
            (Binding::Stone, self.stone_limit()),
            (Binding::Frames, self.frames_limit()),
            (Binding::Site, self.course.venue.longest_wall),
        ];
        let most = most.into_iter().filter_map(|(limit, length)| {
            Some(Limit {
                limit,
                bound: Bound::Most,
                length: length?,
            })
        });
        let limits = [room].into_iter().chain(most).collect();
        let mut sizing = Sizing::of(limits, self.course.wall.length, self.course.units);
        self.keep_the_line(&mut sizing);
        sizing
    }

    /// Whatever can go wrong with a wall goes wrong at its given length, or at that of its
    /// line, or as far as its ground was surveyed.
    fn tried_length(&self) -> Length {
        let wall = &self.course.wall;
        if let Some(length) = wall.length {
            return length;
        }
        let surveyed = wall.ground.iter().map(|survey| survey.station);
        let longest = |longest: Length, length: Length| {
            if longest < length { length } else { longest }
        };
        surveyed
            .chain([metres(1.0), total(&wall.line)])
            .fold(metres(0.0), longest)
    }

    /// A line that can't be made as long as the limits ask stays as it is given: only its last
    /// straight is ever stretched or shortened.
    fn keep_the_line(&self, sizing: &mut Sizing) {
        let (wall, allowed) = (&self.course.wall, sizing.length);
        if wall.length.is_some() || wall.line.is_empty() {
            return;
        }
        let given = Line::of_length(&wall.line, total(&wall.line));
        sizing.kept = match all_but_the_last_straight(&wall.line) {
            _ if given.closes() => Some(Kept::Closed { allowed }),
            None => Some(Kept::NoStraight { allowed }),
            Some(others) if allowed <= others => Some(Kept::OthersTooLong { others, allowed }),
            Some(_) => None,
        };
        if sizing.kept.is_some() {
            sizing.length = total(&wall.line);
        }
    }

    /// The longest wall that finishes in the wished-for share of simulated courses. A part of
    /// the courses says about where it is; all of them are then asked there.
    fn pace_limit(&self) -> Length {
        let near = self.about_pace(A_PART);
        let looked = Looked {
            courses: self.quickest_first(near, SAMPLES),
            share: self.course.chance,
            near,
            off: A_PART_OFF,
            step: metres(PACE_STEP_M),
            most: metres(LONGEST_M),
        };
        let found = self.longest_kept(&looked);
        let feet = metres(FOOT_M) * ((found.si() + PACE_STEP_M) / FOOT_M).floor();
        if found < feet && self.course.chance <= self.share_finishing(feet) {
            feet
        } else {
            found
        }
    }

    /// The share of all simulated courses that finish a wall so long; 0 if none can be built.
    fn share_finishing(&self, length: Length) -> f64 {
        let finishing = self.finishing(length, &forecast::first(SAMPLES));
        let count = finishing.map_or(0, |all| all.into_iter().filter(|it| *it).count());
        count as f64 / SAMPLES as f64
    }

    /// About the same, by a part of the simulated courses.
    pub(super) fn about_pace(&self, courses: usize) -> Length {
        self.about_pace_from(crew::elbow_room(&self.course.group, &self.pace), courses)
    }

    /// About the same, looked for from a length that can't be far off.
    pub(super) fn about_pace_from(&self, near: Length, courses: usize) -> Length {
        let looked = Looked {
            courses: self.quickest_first(near, courses),
            share: self.course.chance,
            near,
            off: GUESS_OFF,
            step: near * ABOUT,
            most: metres(LONGEST_M),
        };
        self.longest_kept(&looked)
    }

    fn longest_kept(&self, looked: &Looked) -> Length {
        longest_kept(looked, |length| {
            let programme = self.build(length).map(|built| self.programme(&built));
            move |courses: &[u32]| match &programme {
                Ok(programme) => self.time.ends(programme, &self.tables.stages, courses),
                Err(_) => vec![f64::INFINITY; courses.len()],
            }
        })
    }

    /// The first of the simulated courses by number, in the order in which they will likely finish a
    /// wall so long.
    fn quickest_first(&self, length: Length, courses: usize) -> Vec<u32> {
        let programme = self.build(length).map(|built| self.programme(&built));
        programme.map_or_else(
            |_| forecast::first(courses),
            |programme| {
                self.time
                    .quickest_first(&programme, &self.tables.stages, courses)
            },
        )
    }

    /// Of each of some simulated courses, whether it finishes a wall so long; nothing if no such
    /// wall can be built.
    pub(super) fn finishing(&self, length: Length, courses: &[u32]) -> Option<Vec<bool>> {
        let built = self.build(length).ok()?;
        let programme = self.programme(&built);
        let ends = self.time.ends(&programme, &self.tables.stages, courses);
        Some(ends.into_iter().map(f64::is_finite).collect())
    }

    /// Where the time allows less wall than the group needs to stand at, the greatest height,
    /// in steps of 5 cm, at which that much wall would be finished; nothing if none down to
    /// half the height would.
    pub(super) fn lower_wall(&self, sizing: &Sizing) -> Option<Length> {
        let short = sizing.falls_short_of()?;
        if sizing.binding != Binding::Pace || sizing.kept.is_some() {
            return None;
        }
        self.highest(short.length, length_of(sizing, Binding::Pace))
    }

    /// The greatest height, in steps of 5 cm below the given one, at which so much wall would be
    /// finished, where the time `allows` less; nothing if none down to half the height would. A
    /// course that finishes a wall finishes a lower one as well.
    pub(super) fn highest(&self, length: Length, allows: Length) -> Option<Length> {
        let height = self.course.wall.height;
        let step = metres(HEIGHT_STEP_M);
        let steps = (height.si() / HEIGHT_STEP_M - 1e-9).floor();
        // What is left of the height below the steps, so that each is a whole number of them.
        let foot = height - step * steps;
        let looked = Looked {
            courses: self.quickest_first(length, SAMPLES),
            share: self.course.chance,
            // As much lower as it is too long, it takes about as long.
            near: height * (allows.si() / length.si()) - foot,
            off: 0.0,
            step,
            most: step * (steps - 1.0),
        };
        let highest = foot
            + longest_kept(&looked, |above| {
                let lower = self.at_height(foot + above);
                let programme = lower.and_then(|it| Some(it.programme(&it.build(length).ok()?)));
                move |courses: &[u32]| match &programme {
                    Some(programme) => self.time.ends(programme, &self.tables.stages, courses),
                    None => vec![f64::INFINITY; courses.len()],
                }
            });
        (height / 2.0 <= highest).then_some(highest)
    }

    /// The same course with a lower wall: what of it rises above is left out.
    fn at_height(&self, height: Length) -> Option<Planner<'_>> {
        let mut course = Course::clone(&self.course);
        course.wall.height = height;
        course.wall.through_rows.retain(|row| *row < height);
        self.on_the_same_days(course, Rc::clone(&self.time)).ok()
    }

    /// The longest wall whose high order is still to be had.
    pub(super) fn stone_limit(&self) -> Option<Length> {
        let most = self.course.stone.most?;
        if self.course.stone.practice_pitch {
            return None;
        }
        Some(longest(metres(6.0), metres(STONE_FINENESS_M), |length| {
            self.build(length)
                .is_ok_and(|built| built.stone.to_deliver.high <= most)
        }))
    }

    /// What the stock spans when all of it stands at once. With fewer than two frames all
    /// are to be borrowed anyway, and the stock says nothing about the length.
    pub(super) fn frames_limit(&self) -> Option<Length> {
        let frames = &self.course.frames;
        let have = frames
            .in_stock
            .filter(|have| !frames.leapfrog && 2 <= *have)?;
        if self.course.wall.line.is_empty() && !matches!(self.course.wall.top, Top::Stepped { .. })
        {
            return Some(frames.spacing * f64::from(have - 1));
        }
        let near = frames.spacing * f64::from(have);
        Some(longest(near, metres(STONE_FINENESS_M), |length| {
            crate::frames::count(&self.standing(length), frames) <= have as usize
        }))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::course::Experience;
    use crate::plan::Memory;
    use crate::plan::sample::{course, tables};

    /// Few courses are asked on the way; of all of them enough finish the length found, and too few
    /// one that is a little longer.
    #[test]
    fn the_length_that_pace_allows_holds_for_all_courses() {
        let tables = tables();
        for number in 0..12_u32 {
            let mut course = course();
            course.seed += u64::from(number);
            course.wall.height = metres(0.8 + 0.05 * f64::from(number));
            course.chance = [0.5, 0.8, 0.95][number as usize % 3];
            course.frames.spacing = metres(1.5 + 0.2 * f64::from(number));
            if number % 4 == 0 {
                course.days.pop();
            }
            if number % 5 == 0 {
                for student in &mut course.group.students {
                    student.experience = Experience::Experienced;
                }
            }
            let planner = Planner::new(&course, &tables, &Memory::default()).expect("a course");
            let found = planner.pace_limit();
            let finish = planner.share_finishing(found);
            assert!(course.chance <= finish, "{number}: {found:?}");
            let longer = planner.share_finishing(found + metres(PACE_STEP_M));
            assert!(longer < course.chance, "{number}: {longer} at {found:?}");
        }
    }

    /// The wall is to be longer than pace allows: of all courses enough finish the height found, and
    /// too few one that is a step of 5 cm higher.
    #[test]
    fn the_highest_wall_of_a_length_holds_for_all_courses() {
        let tables = tables();
        for number in 0..6_u32 {
            let mut course = course();
            course.wall.height = metres(1.0 + 0.037 * f64::from(number));
            course.chance = [0.5, 0.8, 0.95][number as usize % 3];
            let planner = Planner::new(&course, &tables, &Memory::default()).expect("a course");
            let allows = planner.pace_limit();
            let length = allows * (1.02 + 0.02 * f64::from(number));
            let found = planner.highest(length, allows).expect("a height");
            let finish = |height| {
                let lower = planner.at_height(height).expect("a wall");
                lower.share_finishing(length)
            };
            assert!(found < course.wall.height, "{number}: {found:?}");
            assert!(course.chance <= finish(found), "{number}: {found:?}");
            let higher = finish(found + metres(HEIGHT_STEP_M));
            assert!(higher < course.chance, "{number}: {higher} above {found:?}");
        }
    }

    /// Of these heights some allow a foot that lies between two centimetres, and no length else does.
    #[test]
    fn a_foot_within_the_last_centimetre_is_allowed() {
        let (tables, mut feet_found) = (tables(), 0);
        for number in 0..150_u32 {
            let mut course = course();
            course.wall.height = metres(0.9 + 0.002 * f64::from(number));
            let planner = Planner::new(&course, &tables, &Memory::default()).expect("a course");
            let found = planner.pace_limit();
            let from_a_whole = |step: f64| (found.si() / step - (found.si() / step).round()).abs();
            if 1e-6 < from_a_whole(PACE_STEP_M) {
                assert!(from_a_whole(FOOT_M) < 1e-6, "{found:?}");
                assert!(course.chance <= planner.share_finishing(found));
                feet_found += 1;
            }
        }
        assert!(0 < feet_found);
    }
}
