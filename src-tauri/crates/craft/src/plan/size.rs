//! How long the wall is: every limit worked out, and the length they leave.

use super::Planner;
use crate::Error;
use crate::course::Course;
use crate::pace::crew;
use crate::pace::forecast;
use crate::pace::sizing::{self, Binding, Bound, Kept, Limit, Sizing, longest, rounded_down};
use crate::quantity::{self, Length, Read, metres};
use crate::wall::{Line, Top, all_but_the_last_straight, total};
use std::borrow::Cow;
use std::rc::Rc;

/// How much lower a wall is tried where the time does not allow one so high.
const HEIGHT_STEP_M: f64 = 0.05;

/// How finely the length that pace allows is searched: far below how surely it is known.
const PACE_FINENESS_M: f64 = 0.005;
/// How finely the length that the stone allows is searched; this costs next to nothing.
const STONE_FINENESS_M: f64 = 1e-6;

impl Planner<'_> {
    /// All limits, and the length they leave.
    pub(super) fn size(&self) -> Result<Sizing, Error> {
        self.build(self.tried_length())?;
        let pace = self.pace_limit();
        let mut limits = vec![
            Limit {
                limit: Binding::ElbowRoom,
                bound: Bound::Least,
                length: crew::elbow_room(&self.course.group, &self.pace),
            },
            Limit {
                limit: Binding::Pace,
                bound: Bound::Most,
                length: pace,
            },
        ];
        let most = |limit, length| Limit {
            limit,
            bound: Bound::Most,
            length,
        };
        limits.extend(
            self.stone_limit()
                .map(|length| most(Binding::Stone, length)),
        );
        limits.extend(
            self.frames_limit()
                .map(|length| most(Binding::Frames, length)),
        );
        limits.extend(
            self.course
                .venue
                .longest_wall
                .map(|length| most(Binding::Site, length)),
        );
        let mut sizing = Sizing::of(limits, self.course.wall.length, self.course.units);
        self.keep_the_chance(&mut sizing);
        self.keep_the_line(&mut sizing);
        Ok(sizing)
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

    /// The longest wall that finishes in the wished-for share of simulated courses.
    fn pace_limit(&self) -> Length {
        let near = crew::elbow_room(&self.course.group, &self.pace);
        longest(near, metres(PACE_FINENESS_M), |length| {
            self.finishes(length)
        })
    }

    fn finishes(&self, length: Length) -> bool {
        self.build(length).is_ok_and(|built| {
            let chance =
                forecast::chance(&self.programme(&built), &self.calendar, &self.draws(&built));
            self.course.chance <= chance
        })
    }

    /// Frames, throughs and copes come in whole numbers, so that a rounded length could in
    /// rare cases fall on the wrong side of a step: it then gives way by one step more.
    fn keep_the_chance(&self, sizing: &mut Sizing) {
        let step = sizing::step(self.course.units);
        while sizing.binding == Binding::Pace
            && step * 1.5 < sizing.length
            && !self.finishes(sizing.length)
        {
            sizing.length = rounded_down(sizing.length - step, self.course.units);
        }
    }

    /// Where the time allows less wall than the group needs to stand at, the greatest height,
    /// in steps of 5 cm, at which that much wall would be finished; nothing if none down to
    /// half the height would.
    pub(super) fn lower_wall(&self, sizing: &Sizing) -> Option<Length> {
        let short = sizing.falls_short_of()?;
        if sizing.binding != Binding::Pace || sizing.kept.is_some() {
            return None;
        }
        let height = self.course.wall.height;
        let steps = quantity::whole_number(height.si() / HEIGHT_STEP_M / 2.0);
        (1..=steps)
            .map(|step| height - metres(HEIGHT_STEP_M * step as f64))
            .find(|lower| {
                self.at_height(*lower)
                    .is_some_and(|it| it.finishes(short.length))
            })
    }

    /// The same course with a lower wall: what of it rises above is left out.
    fn at_height(&self, height: Length) -> Option<Planner<'_>> {
        let mut course = Course::clone(&self.course);
        course.wall.height = height;
        course.wall.through_rows.retain(|row| *row < height);
        Some(Planner {
            section: course.wall.section().ok()?,
            ground: self.ground.clone(),
            course: Cow::Owned(course),
            tables: self.tables,
            rules: self.rules.clone(),
            pace: self.pace.clone(),
            calendar: self.calendar.clone(),
            luck: Rc::clone(&self.luck),
        })
    }

    /// The longest wall whose high order is still to be had.
    fn stone_limit(&self) -> Option<Length> {
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
    fn frames_limit(&self) -> Option<Length> {
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
