//! How long the wall is: every limit worked out, and the length they leave.

use super::Planner;
use crate::Error;
use crate::course::Course;
use crate::pace::SAMPLES;
use crate::pace::crew;
use crate::pace::sizing::{self, Binding, Bound, Kept, Limit, Sizing, longest, rounded_down};
use crate::quantity::{self, Length, Read, metres};
use crate::wall::{Line, Top, all_but_the_last_straight, total};
use std::borrow::Cow;
use std::rc::Rc;

/// How much lower a wall is tried where the time does not allow one so high.
const HEIGHT_STEP_M: f64 = 0.05;

/// The longest wall that is ever tried.
pub(super) const LONGEST_TRIED_M: f64 = 400.0;

/// How finely the length that pace allows is searched: far below how surely it is known.
const PACE_FINENESS_M: f64 = 0.01;
/// How finely it is looked for at first, with a part of the simulated courses.
const ABOUT_M: f64 = 0.05;
/// So many courses are that part.
const A_PART: usize = 500;
/// So often at most the length is tried with all of them.
const TRIES: i32 = 10;
/// A chance so much above the wished-for one is that one, and far nearer than it is known.
const HAIR: f64 = 0.0002;
/// The chance falls about by this share of the share that a wall gets longer: a first guess.
const SLOPE: f64 = 0.8;
/// So often a length is tried that need only be about right.
const QUICK_TRIES: usize = 5;
/// And it need be right to this share.
const QUICK_SHARE: f64 = 0.01;
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

    /// The longest wall that finishes in the wished-for share of simulated courses. A part of
    /// the courses says about where it is; all of them are then asked there.
    fn pace_limit(&self) -> Length {
        self.exactly_near(self.about_pace(A_PART))
    }

    /// The same by a part of the simulated courses.
    pub(super) fn about_pace(&self, samples: usize) -> Length {
        let near = crew::elbow_room(&self.course.group, &self.pace);
        longest(near, metres(ABOUT_M), |length| {
            0.0 <= self.to_spare(length, samples)
        })
    }

    /// The same by all of them. From where a part of them says it is, a step on by the slope of
    /// the chance, then in between, until the chance is the wished-for one but for a hair.
    fn exactly_near(&self, about: Length) -> Length {
        let (mut good, mut bad) = ((metres(0.0), 1.0 - self.course.chance), None);
        let mut length = about;
        let mut short_of_it = 0;
        for tried in 1..=TRIES {
            let spare = self.to_spare(length, SAMPLES);
            if spare < 0.0 {
                bad = Some((length, spare));
                short_of_it += 1;
            } else {
                good = (length, spare);
                short_of_it = 0;
            }
            let near_enough = (0.0..HAIR).contains(&spare);
            // Twice as far each time, because the chance may fall far less steeply than guessed.
            let far = length * ((spare.abs() / SLOPE + HAIR) * 2_f64.powi(tried - 1)).min(0.5);
            length = match bad {
                _ if near_enough => break,
                None => length + far,
                Some((bad, _)) if good.0 <= metres(0.0) => bad - far,
                Some((bad, _)) if bad - good.0 <= metres(PACE_FINENESS_M) => break,
                // Where the chance falls by a step, as with one frame more, its slope leads nowhere.
                Some((bad, _)) if 1 < short_of_it => (good.0 + bad) / 2.0,
                Some((bad, short)) => good.0 + (bad - good.0) * (good.1 / (good.1 - short)),
            };
            if length <= metres(0.0) {
                break;
            }
        }
        good.0
    }

    /// About the same, looked for from a length that can't be far off, by a part of the courses.
    pub(super) fn about_pace_from(&self, start: Length, samples: usize) -> Length {
        let (mut length, mut spare) = (start, self.to_spare(start, samples));
        let mut slope = SLOPE;
        for _ in 0..QUICK_TRIES {
            let by = (spare / slope).clamp(-0.5, 0.5);
            if by.abs() < QUICK_SHARE {
                break;
            }
            let next = length * (1.0 + by);
            let then = self.to_spare(next, samples);
            // Where the chance is level nothing says how far to go.
            slope = ((spare - then) / by).max(SLOPE / 4.0);
            (length, spare) = (next, then);
        }
        length
    }

    /// How much more than the wished-for share of so many simulated courses finishes; less than
    /// nothing where it is less.
    fn to_spare(&self, length: Length, samples: usize) -> f64 {
        let Ok(built) = self.build(length) else {
            return -1.0;
        };
        let programme = self.programme(&built);
        let chance = self.time.chance(&programme, &self.tables.stages, samples);
        chance - self.course.chance
    }

    fn finishes(&self, length: Length) -> bool {
        0.0 <= self.to_spare(length, SAMPLES)
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
        self.highest(short.length)
    }

    /// The greatest height, in steps of 5 cm below the given one, at which so much wall would be
    /// finished; nothing if none down to half the height would.
    pub(super) fn highest(&self, length: Length) -> Option<Length> {
        let height = self.course.wall.height;
        let lower = |steps: usize| height - metres(HEIGHT_STEP_M * steps as f64);
        let holds = |steps: usize| {
            self.at_height(lower(steps))
                .is_some_and(|it| it.finishes(length))
        };
        let (mut short, mut enough) =
            (0, quantity::whole_number(height.si() / HEIGHT_STEP_M / 2.0));
        if enough == 0 || !holds(enough) {
            return None;
        }
        while 1 < enough - short {
            let middle = (short + enough) / 2;
            if holds(middle) {
                enough = middle;
            } else {
                short = middle;
            }
        }
        Some(lower(enough))
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
            book: Rc::clone(&self.book),
            pace: self.pace.clone(),
            time: Rc::clone(&self.time),
        })
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
