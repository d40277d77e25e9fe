//! The longest wall that enough of the simulated courses finish, found by asking as few of them as
//! may be.
//!
//! A course that finishes a wall finishes a shorter one, and one that does not finish it will not
//! finish a longer one. So between two lengths only those are asked again that finish the shorter
//! and not the longer; the others have answered. And they are asked in the order in which they will
//! likely finish, from where it is doubtful to both sides: once none of some hundred fails, no
//! quicker one will, and once none of them finishes, no slower one will. Where one frame more lets a
//! course finish after all, or a lesson that now waits for the other side of a break ends one that
//! had time, the answer is off by that course: the forecast at the length chosen asks all of them.

use crate::quantity::{Length, Read};

/// The chance falls about by this share of the share that a wall gets longer: a first guess.
const SLOPE: f64 = 0.8;
/// So much of what a guess may be off by is added to the next, so that the answer lies between.
const A_LITTLE: f64 = 0.2;
/// So often at most a length is tried.
const TRIES: i32 = 40;
/// Each try halves the stretch at least, but for this share: where the chance falls by a step its
/// slope leads nowhere.
const NEAR_AN_END: f64 = 0.15;
/// So many courses at a time are asked: enough that all of them going the same way is no accident,
/// few against the thousands left unasked.
const A_BLOCK: usize = 256;

/// What is looked for, and from where.
#[derive(Debug, Clone)]
pub(super) struct Looked {
    /// The courses by number, in the order in which they will likely finish.
    pub(super) courses: Vec<u32>,
    /// This share of them is to finish.
    pub(super) share: f64,
    /// Where the answer is likely.
    pub(super) near: Length,
    /// How far off that may be, as a share of it.
    pub(super) off: f64,
    /// The answer is a whole number of these, so that it is the same from wherever it is looked for.
    pub(super) step: Length,
    /// No longer one is tried.
    pub(super) most: Length,
}

impl Looked {
    /// A length in whole steps, one at least and no more than the most.
    fn steps(&self, length: Length) -> usize {
        let steps = (length.si() / self.step.si()).round();
        (steps as usize).clamp(1, self.most_steps())
    }

    fn most_steps(&self) -> usize {
        ((self.most.si() / self.step.si() + 1e-9).floor() as usize).max(1)
    }
}

/// The longest wall found, in whole steps; 0 m where no wall is finished by enough courses. `tried`
/// tells of a length when each of some courses finishes it: infinite if it does not.
pub(super) fn longest_kept<Ends: Fn(&[u32]) -> Vec<f64>>(
    looked: &Looked,
    tried: impl Fn(Length) -> Ends,
) -> Length {
    let mut bracket = Bracket::new(looked);
    let mut steps = looked.steps(looked.near * (1.0 + looked.off));
    for tries in 0..TRIES {
        bracket.ask(steps, tried(looked.step * steps as f64));
        match bracket.next(looked, tries) {
            Some(next) => steps = next,
            None => break,
        }
    }
    looked.step * bracket.good.0 as f64
}

/// A stretch of lengths that holds the answer, both ends in steps.
struct Bracket {
    /// So many courses have to finish.
    need: usize,
    /// The longest length that enough courses finish, and how many do.
    good: (usize, usize),
    /// The shortest length that too few finish, and how many do.
    bad: Option<(usize, usize)>,
    /// The courses that finish the one and not the other, the quickest first.
    open: Vec<Course>,
}

/// A simulated course by its number, and when it finished the last wall it was asked about.
struct Course {
    number: u32,
    end: f64,
}

impl Course {
    fn finishes(&self) -> bool {
        self.end.is_finite()
    }
}

impl Bracket {
    fn new(looked: &Looked) -> Self {
        // A hair less, so that 0.8 of 500 is 400 whatever the last binary digit.
        let need = (looked.share * looked.courses.len() as f64 - 1e-6)
            .ceil()
            .max(1.0);
        Self {
            need: need as usize,
            good: (0, looked.courses.len()),
            bad: None,
            open: looked
                .courses
                .iter()
                .map(|number| Course {
                    number: *number,
                    end: 0.0,
                })
                .collect(),
        }
    }

    /// Asks the open courses about a length within the stretch, which it then ends.
    fn ask(&mut self, steps: usize, ends: impl Fn(&[u32]) -> Vec<f64>) {
        let surely = self.bad.map_or(0, |(_, finishing)| finishing);
        let doubtful = self.need.saturating_sub(surely).min(self.open.len());
        let (quick, slow) = self.open.split_at_mut(doubtful);
        // Who is not asked finishes if it is quicker than all who were, and does not if it is slower.
        for course in quick.iter_mut().filter(|it| !it.finishes()) {
            course.end = 0.0;
        }
        for course in slow.iter_mut() {
            course.end = f64::INFINITY;
        }
        for some in quick.rchunks_mut(A_BLOCK) {
            ask(some, &ends);
            if some.iter().all(Course::finishes) {
                break;
            }
        }
        for some in slow.chunks_mut(A_BLOCK) {
            ask(some, &ends);
            if !some.iter().any(Course::finishes) {
                break;
            }
        }
        self.open.sort_by(|a, b| a.end.total_cmp(&b.end));
        let count = surely + self.open.iter().filter(|it| it.finishes()).count();
        let enough = self.need <= count;
        // Those that finish a length too long for enough of them finish all shorter ones.
        self.open.retain(|it| it.finishes() == enough);
        if enough {
            self.good = (steps, count);
        } else {
            self.bad = Some((steps, count));
        }
    }

    /// The next length worth asking about, in steps.
    fn next(&self, looked: &Looked, tried: i32) -> Option<usize> {
        let courses = looked.courses.len() as f64;
        let share = |count: usize| (count as f64 - self.need as f64) / courses;
        // Twice as far each time, because the chance may fall far less steeply than guessed.
        let far = |share: f64| {
            let by = share.abs() / SLOPE + looked.off * A_LITTLE;
            (by * 2_f64.powi(tried)).min(0.5)
        };
        let (good, spare) = (self.good.0, share(self.good.1));
        let Some((bad, count)) = self.bad else {
            let longer = good as f64 * (1.0 + far(spare));
            let most = looked.most_steps();
            return (good < most).then(|| (longer.round() as usize).clamp(good + 1, most));
        };
        let between = if good == 0 {
            bad as f64 * (1.0 - far(share(count)))
        } else {
            let part = spare / (spare - share(count));
            good as f64 + (bad - good) as f64 * part.clamp(NEAR_AN_END, 1.0 - NEAR_AN_END)
        };
        (good + 1 < bad).then(|| (between.round() as usize).clamp(good + 1, bad - 1))
    }
}

fn ask(some: &mut [Course], ends: impl Fn(&[u32]) -> Vec<f64>) {
    let numbers: Vec<u32> = some.iter().map(|it| it.number).collect();
    for (course, end) in some.iter_mut().zip(ends(&numbers)) {
        course.end = end;
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::pace::sizing::LONGEST_M;
    use crate::quantity::metres;
    use std::cell::Cell;

    /// Courses that finish walls up to these lengths in metres; how long a wall is found for a
    /// share of them, and how many answers that took.
    fn found(reach: &[f64], share: f64, near: f64, step: f64) -> (f64, usize) {
        let asked = Cell::new(0);
        let mut courses: Vec<u32> = (0..reach.len() as u32).collect();
        courses.sort_by(|a, b| reach[*b as usize].total_cmp(&reach[*a as usize]));
        let looked = Looked {
            courses,
            share,
            near: metres(near),
            off: 0.03,
            step: metres(step),
            most: metres(LONGEST_M),
        };
        let length = longest_kept(&looked, |length| {
            let end = move |it: &u32| {
                let took = length.si() / reach[*it as usize];
                if took <= 1.0 { took } else { f64::INFINITY }
            };
            let asked = &asked;
            move |courses: &[u32]| {
                asked.set(asked.get() + courses.len());
                courses.iter().map(end).collect()
            }
        });
        (length.si(), asked.get())
    }

    /// From 5 to 15 m, evenly.
    fn even(courses: usize) -> Vec<f64> {
        let step = 10.0 / courses as f64;
        (0..courses).map(|it| 5.0 + step * it as f64).collect()
    }

    #[test]
    fn the_length_that_a_share_finishes_is_found_from_anywhere() {
        let reach = even(10_000);
        for near in [0.3, 3.0, 6.9, 7.0, 7.2, 14.0, 90.0] {
            for (share, right) in [(0.8, 7.0), (0.5, 10.0), (0.99, 5.1), (0.1, 14.0)] {
                let (length, _) = found(&reach, share, near, 0.001);
                assert!(
                    length <= right + 1e-9 && right - length <= 0.005,
                    "{share} from {near}: {length}"
                );
            }
        }
    }

    #[test]
    fn few_courses_are_asked() {
        for near in [6.7, 7.05] {
            let (_, asked) = found(&even(10_000), 0.8, near, 0.01);
            assert!(asked < 4_000, "{asked}");
        }
    }

    #[test]
    fn steps_plateaus_and_ends_are_found() {
        // All courses end at one length.
        let (length, _) = found(&[6.3; 500], 0.8, 5.0, 0.001);
        assert!((6.299..=6.3).contains(&length), "{length}");
        // Half reach 4 m and half 9 m: for less than half it is 9 m.
        let halves = [[4.0; 250], [9.0; 250]].concat();
        let (length, _) = found(&halves, 0.4, 5.0, 0.001);
        assert!((8.999..=9.0).contains(&length), "{length}");
        let (length, _) = found(&halves, 0.6, 5.0, 0.001);
        assert!((3.999..=4.0).contains(&length), "{length}");
        // Nobody finishes anything, and everybody whatever is tried.
        assert!(found(&[0.0; 500], 0.8, 5.0, 0.001).0 < 0.01);
        let (length, _) = found(&[1000.0; 500], 0.8, 5.0, 0.001);
        assert!((length - LONGEST_M).abs() < 1e-9, "{length}");
    }
}
