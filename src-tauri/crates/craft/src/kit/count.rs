//! What a rule counts by, and how many of that a course has.

use super::heat::Weather;
use crate::conditions::Conditions;
use crate::course::{Course, Day, Group};
use crate::frames::{Frames, LEAST_IN_USE};
use crate::people::pair_count;
use crate::quantity::{Length, Mass, Read, whole_number};
use crate::tables::{KitRule, Per};

/// What the rules count.
#[derive(Debug, Clone, Copy)]
pub struct Counted<'a> {
    /// The group.
    pub group: &'a Group,
    /// The days.
    pub days: &'a [Day],
    /// What holds of the course.
    pub conditions: &'a Conditions,
    /// How hot it is.
    pub weather: Weather,
    /// Frames that stand at once.
    pub frames_standing: usize,
    /// Mass of one steel bar, where frames are of bars and their length is known.
    pub bar: Option<Mass>,
    /// Pairs that find a place at the wall at a time.
    pub stints: usize,
    /// The wall.
    pub length: Length,
}

impl<'a> Counted<'a> {
    /// What there is to count of a course whose wall is so long, with room for so many pairs.
    pub fn of(
        course: &'a Course,
        conditions: &'a Conditions,
        frames: &Frames,
        length: Length,
        stints: usize,
    ) -> Self {
        let given = &course.frames;
        let bars = frames.bars.as_ref().filter(|bars| 0 < bars.count);
        Self {
            group: &course.group,
            days: &course.days,
            conditions,
            weather: Weather::of(course.kit.heat, &course.days, conditions),
            frames_standing: frames_standing(frames, given.leapfrog, given.in_stock),
            bar: bars.and_then(|bars| Some(bars.mass? / bars.count as f64)),
            stints,
            length,
        }
    }

    /// Instructors and assistants.
    pub(super) fn staff(&self) -> usize {
        (self.group.instructors + self.group.assistants) as usize
    }

    /// Everybody there.
    pub(super) fn people(&self) -> usize {
        self.group.students.len() + self.staff()
    }

    /// Whether a rule is on and meant for this course.
    pub(super) fn meets(&self, rule: &KitRule) -> bool {
        let people = u32::try_from(self.people()).unwrap_or(u32::MAX);
        !rule.off
            && self.conditions.met(rule.applies)
            && rule.from_people.is_none_or(|least| least <= people)
            && rule.to_people.is_none_or(|most| people <= most)
    }

    /// How many there are of what a rule counts by, and how a person says it:
    /// `per student, 8 of them`.
    pub(super) fn by(&self, per: Per) -> (f64, String) {
        let students = self.group.students.len();
        let people = self.people();
        let of_them =
            |count: usize, what: &str| (count as f64, format!("per {what}, {count} of them"));
        match per {
            Per::Student => of_them(students, "student"),
            Per::Pair => of_them(pair_count(students), "pair"),
            Per::Stint => {
                let said = format!("per stint, {} worked at a time", self.stints);
                (self.stints as f64, said)
            }
            Per::Frame => of_them(self.frames_standing, "frame"),
            Per::Instructor => of_them(self.staff(), "instructor"),
            Per::Person => of_them(people, "person"),
            Per::People { every } => {
                let shares = people.div_ceil((every as usize).max(1));
                (
                    shares as f64,
                    format!("for every {every} people, {people} of them"),
                )
            }
            Per::PersonHour => {
                let hours = longest_day_hours(self.days);
                let said = format!(
                    "an hour for each of {people} people, {} hours on the longest day",
                    plain(hours)
                );
                (people as f64 * hours, said)
            }
            Per::Day => of_them(self.days.len(), "day"),
            Per::Group => (1.0, "for the group".to_owned()),
            Per::Metre => {
                let metres = self.length.si();
                (metres, format!("per metre of wall, {metres:.2} of them"))
            }
        }
    }

    /// How many of a thing a rule asks for, spares included, and why:
    /// `ceil(each · count · (1 + spare))`, never fewer than its least.
    pub(super) fn need(&self, rule: &KitRule) -> (usize, String) {
        let (count, said) = self.by(rule.per);
        let each = self.each(rule);
        let asked = whole(each * count * (1.0 + rule.spare));
        let need = asked.max(rule.least as usize);
        let least = if asked < need {
            format!(", never fewer than {need}")
        } else {
            String::new()
        };
        let (heat, spare) = (self.heat(rule), spare(rule));
        (
            need,
            format!("{} {said}{heat}{spare}{least}: {}", plain(each), rule.why),
        )
    }

    /// So many to each, in this heat.
    pub(super) fn each(&self, rule: &KitRule) -> f64 {
        rule.each.at(self.weather.heat)
    }

    fn heat(&self, rule: &KitRule) -> String {
        match rule.each {
            crate::tables::Each::Same(_) => String::new(),
            crate::tables::Each::ByHeat(_) => format!(", {}", self.weather.words()),
        }
    }
}

/// So many things: a part of one is one, a remainder of rounding is none.
pub(super) fn whole(exact: f64) -> usize {
    whole_number((exact - 1e-9).ceil().max(0.0))
}

/// `, 25 % spare`; nothing where there are no spares.
pub(super) fn spare(rule: &KitRule) -> String {
    if 0.0 < rule.spare {
        format!(", {:.0} % spare", rule.spare * 100.0)
    } else {
        String::new()
    }
}

/// `2`, `0.5`: a number without needless decimals.
pub(super) fn plain(number: f64) -> String {
    format!("{}", (number * 100.0).round() / 100.0)
}

/// From the start to the finish of the longest day.
fn longest_day_hours(days: &[Day]) -> f64 {
    days.iter()
        .map(|day| (day.finish - day.start).as_seconds_f64() / 3600.0)
        .fold(0.0, f64::max)
}

/// How many frames stand at once: all stations, or what is in stock when they leapfrog.
pub fn frames_standing(frames: &Frames, leapfrog: bool, in_stock: Option<u32>) -> usize {
    let stations = frames.rows.len();
    match in_stock {
        Some(have) if leapfrog => stations.min((have as usize).max(LEAST_IN_USE)),
        _ => stations,
    }
}
