//! What held a simulated course up: the cause that cost it most on the way to its end.
//!
//! The way to the end is followed backwards: from the bay that was done last, over to the bay
//! the others waited for wherever all had to be ready.

use super::follow::Followed;
use super::programme::Programme;
use std::collections::BTreeMap;

/// Less than a minute holds nobody up.
const NO_MATTER: f64 = 1.0;

/// What can hold a course up.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Cause {
    /// A stage went slower than it does in the middle; by its place in the table.
    Stage(usize),
    /// A lesson by wish had to be waited for; by its place in the table.
    Lesson(usize),
    /// A lesson had to wait for the other side of a break.
    Break,
    /// Not everybody had a place at the wall or somebody to ask.
    People,
}

/// How often something held things up most.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Holdup {
    /// What; nothing where the course went as it does in the middle or better.
    pub cause: Option<Cause>,
    /// The share of all courses.
    pub share: f64,
    /// The share of the courses that were not finished.
    pub of_unfinished: f64,
}

impl Cause {
    /// What cost the course just followed most; nothing if it went no slower than one in the
    /// middle. `middling` is how many times slower than usual each stage goes there.
    pub(super) fn of<const N: usize>(
        programme: &Programme,
        followed: Followed<'_, N>,
        middling: &[f64],
    ) -> Option<Self> {
        let mut worst = (NO_MATTER, None);
        let mut note = |minutes: f64, cause| {
            if worst.0 < minutes {
                worst = (minutes, Some(cause));
            }
        };
        let (mut bay, mut crowding, mut waiting) = (followed.last(), 0.0, 0.0);
        // A course that was over before a lesson could be given got as far as the step before.
        let steps = followed.stopped().unwrap_or(programme.steps.len());
        for (number, step) in programme.steps[..steps].iter().enumerate().rev() {
            let [took, waited] = followed.took(programme, number, bay);
            let string = step.string.map_or(1.0, |_| programme.ties.middle);
            let middle = step.usual[bay] * middling[step.stage] * string;
            crowding += middle * step.crowding;
            note(took - middle, Self::Stage(step.stage));
            match step.after {
                Some((lesson, _)) => note(waited, Self::Lesson(lesson)),
                None => waiting += waited,
            }
            if step.together {
                bay = followed.waited_for(number);
            }
        }
        note(waiting, Self::Break);
        note(crowding, Self::People);
        worst.1
    }
}

/// Counts the causes, by when each course finishes; the most frequent first.
pub(super) fn holdups(ends: &[f64], causes: &[Option<Cause>]) -> Vec<Holdup> {
    let mut held: BTreeMap<Option<Cause>, [usize; 2]> = BTreeMap::new();
    for (end, cause) in ends.iter().zip(causes) {
        let [all, unfinished] = held.entry(*cause).or_default();
        *all += 1;
        *unfinished += usize::from(!end.is_finite());
    }
    let unfinished = held.values().map(|[_, unfinished]| unfinished).sum();
    let share = |count: usize, of: usize| count as f64 / of.max(1) as f64;
    let mut holdups: Vec<Holdup> = held
        .into_iter()
        .map(|(cause, [all, unfinished_so])| Holdup {
            cause,
            share: share(all, causes.len()),
            of_unfinished: share(unfinished_so, unfinished),
        })
        .collect();
    holdups.sort_by(|a, b| b.share.total_cmp(&a.share));
    holdups
}
