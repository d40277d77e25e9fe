//! The cautions about the days, and what wishes about lessons cost where they hold the course up.

use super::advice::{length_of, within_the_others};
use super::size::Sized;
use super::{Days, Planner};
use crate::cautions::{self, Hours, Shown};
use crate::course::Course;
use crate::pace::calendar::{Span, left_of, minutes_to};
use crate::pace::sizing::{Binding, rounded_down};
use crate::pace::{Cause, Entry};
use crate::quantity::{Read, show_length, show_share};

/// A wish that holds up fewer of the courses is not asked about.
const OFTEN: f64 = 0.05;
/// So many of the simulated courses are asked what would be without a wish.
const ASKED: u32 = 1000;
/// Less gained of length or chance is not worth naming.
const LEAST_LENGTH_M: f64 = 0.25;
const LEAST_CHANCE: f64 = 0.03;

impl Planner<'_> {
    /// The cautions that follow from the days and how they are run.
    pub(super) fn day_cautions(
        &self,
        sized: &Sized,
        days: &Days,
        timetable: &[Entry],
    ) -> Vec<Shown> {
        // A day that is shut from end to end has its own caution, which says why.
        let working: Vec<f64> = (0..)
            .zip(&days.working)
            .map(|(day, minutes)| {
                if self.is_shut(days, day) {
                    f64::INFINITY
                } else {
                    *minutes
                }
            })
            .collect();
        let mut all = cautions::of_the_days(&self.course, sized.built.length, &working);
        all.extend(cautions::of_the_hours(Hours {
            course: &self.course,
            rests: &self.pace.rests,
            days,
            timetable,
        }));
        all.extend(self.wish_costs(sized));
        all
    }

    fn is_shut(&self, days: &Days, day: usize) -> bool {
        let given = &self.course.days;
        let at = |time| minutes_to(given, given[day].date, time);
        let hours = Span {
            from: at(given[day].start),
            to: at(given[day].finish),
        };
        let shut: Vec<Span> = days.shut.iter().map(|it| it.span).collect();
        left_of(hours, &shut).is_empty()
    }

    /// Each wish that alone costs something; where none does, all together.
    fn wish_costs(&self, sized: &Sized) -> Vec<Shown> {
        let held = self.wishes_that_hold(sized);
        let each = held.iter().filter_map(|wish| self.cost(&[*wish], sized));
        let mut costs: Vec<Shown> = each.collect();
        if costs.is_empty() && 1 < held.len() {
            costs.extend(self.cost(&held, sized));
        }
        costs
    }

    /// Wishes, by their place, that simulated courses had to wait for.
    fn wishes_that_hold(&self, sized: &Sized) -> Vec<usize> {
        let holdups = &sized.forecast.holdups;
        let holds = |lesson: usize| {
            let cause = Some(Cause::Lesson(lesson));
            holdups
                .iter()
                .any(|it| it.cause == cause && OFTEN <= it.share)
        };
        let steps = sized.programme.steps.iter();
        let lessons = steps.filter_map(|step| Some(step.after?.0));
        let unmet = &self.time.timed.unmet;
        let wish_of = |lesson: usize| {
            let id = &self.tables.lessons.get(lesson)?.id;
            let wishes = self.course.running.wishes.iter().enumerate();
            let mut these = wishes.filter(|(_, wish)| wish.lesson == *id);
            these
                .find(|(at, _)| unmet.iter().all(|it| it.wish != *at))
                .map(|(at, _)| at)
        };
        lessons
            .filter(|it| holds(*it))
            .filter_map(wish_of)
            .collect()
    }

    /// What would be without these wishes, if it is worth naming.
    fn cost(&self, wishes: &[usize], sized: &Sized) -> Option<Shown> {
        let mut course = Course::clone(&self.course);
        let mut at = 0;
        course.running.wishes.retain(|_| {
            at += 1;
            !wishes.contains(&(at - 1))
        });
        let without = self.changed(course)?;
        let gained = without
            .longer(self, sized)
            .or_else(|| without.likelier(sized))?;
        let named: Vec<String> = wishes.iter().map(|wish| self.named(*wish)).collect();
        let (it, that) = match named.len() {
            1 => ("its stage waits for it", "that wish"),
            _ => ("their stages wait for them", "those wishes"),
        };
        Some(Shown {
            id: "wish-costs".to_owned(),
            text: format!(
                "{} holds the course up: {it}. Without {that} {gained}.",
                named.join(" with ")
            ),
            source: "this course's own simulation".to_owned(),
            for_students: false,
        })
    }

    fn named(&self, wish: usize) -> String {
        let wish = &self.course.running.wishes[wish];
        let mut lessons = self.tables.lessons.iter();
        let title = lessons.find(|it| it.id == wish.lesson);
        let title = title.map_or(wish.lesson.as_str(), |it| it.title.as_str());
        let at = wish.at.map(|at| at.format(" at %H:%M").to_string());
        let at = at.unwrap_or_else(|| " first thing".to_owned());
        format!("Giving \"{title}\" on day {}{at}", wish.day + 1)
    }

    /// How much longer the wall could be, where its length is not given.
    fn longer(&self, was: &Self, sized: &Sized) -> Option<String> {
        let sizing = &sized.sizing;
        let units = self.course.units;
        if sizing.binding == Binding::Given || sizing.kept.is_some() {
            return None;
        }
        let now = length_of(sizing, Binding::Pace);
        let length = self.allowed(Binding::Pace, now)? * was.measure(now);
        let (length, _) = within_the_others(sizing, Binding::Pace, length);
        let length = rounded_down(length, units);
        let more = (length - sizing.length).si();
        (LEAST_LENGTH_M - 1e-9 <= more).then(|| {
            format!(
                "the wall could be {} long instead of {}",
                show_length(length, units),
                show_length(sizing.length, units)
            )
        })
    }

    /// How much surer it would be that it is finished.
    fn likelier(&self, sized: &Sized) -> Option<String> {
        let courses: Vec<u32> = (0..ASKED).collect();
        let answers = self.finishing(sized.sizing.length, &courses)?;
        let finished = answers.iter().filter(|finishes| **finishes).count();
        let chance = finished as f64 / f64::from(ASKED);
        let now = sized.forecast.chance;
        (now + LEAST_CHANCE <= chance).then(|| {
            format!(
                "the chance of finishing would be {} instead of {}",
                show_share(chance),
                show_share(now)
            )
        })
    }
}
