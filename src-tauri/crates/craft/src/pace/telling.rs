//! Reports added up, one time after another: what is done, and what each stretch tells of pace.

mod turning;

use super::belief::Belief;
use super::between::{Between, Piece};
use super::built::{LEAST, QUICKEST, Quick, SoFar, Stretch, Told, TooSoon};
use super::calendar::Calendar;
use super::evidence::{ABSURD, Worked};
use super::programme::{Programme, Step};
use super::said::{Asked, Last, Said};
use super::whole::Whole;
use crate::tables::PaceSpread;

/// Who goes more than so many times quicker than usual is asked whether it is a slip.
const QUICK: f64 = 3.0;

/// Unless it is about fewer minutes than this, which a watch read in passing may be off by.
const QUICK_MINUTES: f64 = 15.0;

/// A stage some bay is ready for and none has begun: whether its lessons have been given is not
/// known.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Due {
    step: usize,
    /// The stretch that ended with it, and how many of its minutes may have been lesson.
    stretch: Option<(usize, f64)>,
}

/// Reports being added up.
pub(super) struct Telling<'a> {
    /// The wall that is told of.
    whole: &'a Whole,
    programme: &'a Programme,
    is_fixed: &'a dyn Fn(&Step) -> bool,
    fixed: Vec<bool>,
    calendar: &'a Calendar,
    believed: &'a Belief,
    spread: &'a PaceSpread,
    pub(super) so_far: SoFar,
    /// Working minutes that went into lessons and waiting for them.
    aside: f64,
    due: Option<Due>,
    last: Vec<Last>,
}

impl<'a> Telling<'a> {
    pub(super) fn new(
        whole: &'a Whole,
        is_fixed: &'a dyn Fn(&Step) -> bool,
        calendar: &'a Calendar,
        believed: &'a Belief,
        spread: &'a PaceSpread,
    ) -> Self {
        let programme = &whole.programme;
        let steps = programme.steps.len();
        let last = Last {
            clock: calendar.begins(),
            aside: 0.0,
            done: vec![0.0; steps],
        };
        Self {
            whole,
            programme,
            is_fixed,
            fixed: programme.steps.iter().map(is_fixed).collect(),
            calendar,
            believed,
            spread,
            so_far: SoFar {
                now: calendar.begins(),
                done: vec![vec![0.0; programme.bays]; steps],
                history: Vec::new(),
                given: vec![0.0; steps],
                stretches: Vec::new(),
                quick: Vec::new(),
            },
            aside: 0.0,
            due: None,
            last: vec![last; programme.bays],
        }
    }

    /// Takes in all reports of one time, each with its number.
    pub(super) fn hear(&mut self, told: &[(usize, Told)]) -> Result<(), TooSoon> {
        let before = self.so_far.clone();
        for (_, report) in told {
            report.apply(self.programme, &mut self.so_far.done);
            self.so_far.now = report.clock;
        }
        let begun: Vec<usize> = (0..self.programme.steps.len())
            .filter(|step| !before.begun(*step) && self.so_far.begun(*step))
            .collect();
        let next = self.next();
        let (mut given, mut waited) = (0.0, 0.0);
        let mut due = next.map(|step| Due {
            step,
            stretch: None,
        });
        let mut earlier: f64 = 0.0;
        for bays in self.groups(told) {
            let said = Said::of(
                &Asked {
                    programme: self.programme,
                    fixed: &self.fixed,
                    last: &self.last,
                    done: &self.so_far.done,
                    told,
                },
                &bays,
            );
            let usual: f64 = said.usual.iter().sum();
            let ready = next.filter(|step| bays.iter().any(|bay| self.is_ready(*step, *bay)));
            let between = self.between(&bays, &said, &begun, ready);
            self.question(&between, &said, usual, told[0].0)?;
            if usual < LEAST && said.misread <= 0.0 {
                continue;
            }
            let weights = self.by_stage(&said.weights, 0.0);
            let expected = usual * self.slowness(&weights);
            let spent = between.spent(usual, expected, QUICKEST.recip());
            earlier = earlier.max(spent.earlier);
            if ready.is_some() {
                (given, waited) = (spent.given, spent.aside);
                let room = spent.built - spent.range[0];
                due = due.map(|due| Due {
                    stretch: Some((self.so_far.stretches.len(), room)),
                    ..due
                });
            }
            self.so_far.stretches.push(Stretch {
                worked: Worked {
                    // Beyond this it is a slip of the pen, or they stood still.
                    minutes: if said.misread <= 0.0 {
                        spent.built.min(ABSURD * usual)
                    } else {
                        spent.built
                    },
                    usual,
                    weights,
                    tied: self.by_stage(&self.tied(), None),
                    unsure: (spent.range[1] - spent.range[0]) / 2.0,
                    misread: said.misread,
                },
                share: bays.len() as f64 / self.programme.bays as f64,
            });
            for bay in bays {
                self.last[bay].clock = f64::NAN;
            }
        }
        self.give(&begun, earlier);
        if let Some(step) = next {
            self.so_far.given[step] += given;
            self.aside += waited;
        }
        self.due = due.map(|due| Due {
            stretch: due.stretch.or(self
                .due
                .filter(|it| it.step == due.step)
                .and_then(|it| it.stretch)),
            ..due
        });
        self.remember();
        let so_far = &mut self.so_far;
        so_far.history.push((so_far.now, so_far.done.clone()));
        Ok(())
    }

    /// The bays that are told of, those together that were last told of at one time. Whoever
    /// says that a stage is still where it was has told of it too; of a bay where something must
    /// be done because of what another has begun, nothing has been said yet.
    fn groups(&self, told: &[(usize, Told)]) -> Vec<Vec<usize>> {
        let named = |bay: usize| {
            told.iter()
                .any(|(_, it)| it.bay.is_none_or(|told| told == bay))
        };
        let part = |bay: usize| {
            told.iter().any(|(_, it)| {
                it.done < 1.0 && 0.0 < it.done && it.bay.is_none_or(|told| told == bay)
            })
        };
        let moved = |bay: usize| {
            let steps = self.so_far.done.iter().zip(&self.last[bay].done);
            steps.into_iter().any(|(now, then)| *then < now[bay])
        };
        let mut groups: Vec<Vec<usize>> = Vec::new();
        let bays = 0..self.programme.bays;
        for bay in bays.filter(|bay| named(*bay) && (part(*bay) || moved(*bay))) {
            let same = |group: &&mut Vec<usize>| {
                let (a, b) = (&self.last[group[0]], &self.last[bay]);
                (a.clock - b.clock).abs() < 1e-9
            };
            match groups.iter_mut().find(same) {
                Some(group) => group.push(bay),
                None => groups.push(vec![bay]),
            }
        }
        groups.sort_by(|a, b| self.last[a[0]].clock.total_cmp(&self.last[b[0]].clock));
        groups
    }

    /// How many times its usual minutes such work is believed to take, by all that was told so
    /// far.
    fn slowness(&self, weights: &[f64]) -> f64 {
        let belief = self.so_far.learned(self.believed, self.spread);
        belief.of_sum(weights).0.exp()
    }

    /// What is known step by step, row by row of the stage table.
    fn by_stage<T: Clone>(&self, by_step: &[T], otherwise: T) -> Vec<T> {
        let mut rows = vec![otherwise; self.believed.len()];
        for (step, it) in self.programme.steps.iter().zip(by_step) {
            rows[step.stage] = it.clone();
        }
        rows
    }

    /// How many pairs the string ties together, step by step.
    fn tied(&self) -> Vec<Option<f64>> {
        let steps = self.programme.steps.iter();
        let pairs = self.programme.ties.pairs;
        steps.map(|step| step.string.map(|_| pairs)).collect()
    }

    /// The time since these bays were last told of.
    fn between(
        &self,
        bays: &[usize],
        said: &Said,
        begun: &[usize],
        ready: Option<usize>,
    ) -> Between<'a> {
        let last = &self.last[bays[0]];
        let all: f64 = said.usual.iter().sum();
        let pieces = (0..said.usual.len()).map(|step| {
            let share = if 0.0 < all {
                said.usual[step] / all
            } else {
                0.0
            };
            let piece = Piece {
                share,
                fixed: said.fixed[step],
                ..Piece::default()
            };
            if begun.contains(&step) {
                self.taught_before(step, piece)
            } else {
                piece
            }
        });
        let mut pieces: Vec<Piece> = pieces.collect();
        if all <= 0.0 {
            pieces.push(Piece {
                share: 1.0,
                ..Piece::default()
            });
        }
        let due = self.due.filter(|due| begun.first() == Some(&due.step));
        let room = due
            .and_then(|due| due.stretch)
            .map_or(0.0, |(_, room)| room);
        let next = ready.map(|step| self.taught_before(step, Piece::default()));
        Between {
            calendar: self.calendar,
            from: last.clock,
            now: self.so_far.now,
            aside: self.aside - last.aside,
            earlier: due.map_or(0.0, |due| room.min(self.to_teach(due.step))),
            pieces,
            next: next.filter(|next| !next.lessons.is_empty() || next.after.is_some()),
        }
    }

    /// A piece with the lessons that stand before its step.
    fn taught_before(&self, step: usize, piece: Piece) -> Piece {
        let mut given = self.so_far.given[step];
        let it = &self.programme.steps[step];
        let minutes = it.lessons.iter().map(|lesson| {
            let whole = self.programme.lesson_minutes[*lesson];
            let before = given.min(whole);
            given -= before;
            whole - before
        });
        Piece {
            lessons: minutes.filter(|minutes| 0.0 < *minutes).collect(),
            after: it.after.map(|(_, clock)| clock),
            ..piece
        }
    }

    /// Minutes of a step's lessons that are still to be given.
    fn to_teach(&self, step: usize) -> f64 {
        self.taught_before(step, Piece::default())
            .lessons
            .iter()
            .sum()
    }

    /// The first step that no bay has begun, if a bay is ready for it.
    fn next(&self) -> Option<usize> {
        let steps = 0..self.programme.steps.len();
        let next = steps.into_iter().find(|step| !self.so_far.begun(*step))?;
        let ready = (0..self.programme.bays).any(|bay| self.is_ready(next, bay));
        ready.then_some(next)
    }

    fn is_ready(&self, step: usize, bay: usize) -> bool {
        let before = &self.so_far.done[..step];
        if self.programme.steps[step].together {
            before.iter().flatten().all(|done| 1.0 <= *done)
        } else {
            0 < step && before.iter().all(|done| 1.0 <= done[bay])
        }
    }

    /// Refuses what can't be, and asks about what hardly can.
    fn question(
        &mut self,
        between: &Between<'_>,
        said: &Said,
        usual: f64,
        report: usize,
    ) -> Result<(), TooSoon> {
        let whole = usual + said.fixed.iter().sum::<f64>();
        if whole <= LEAST {
            return Ok(());
        }
        let pace = between.pace(usual);
        if pace * QUICKEST < 1.0 {
            return Err(TooSoon {
                report,
                minutes: pace * whole,
                usual: whole,
            });
        }
        if pace * QUICK < 1.0 && QUICK_MINUTES < whole * (1.0 - pace) {
            self.so_far.quick.push(Quick {
                report,
                times: pace.recip(),
            });
        }
        Ok(())
    }

    /// The lessons of these steps have been given; so many minutes of them before the report
    /// before, in the stretch that had been thought to be all building.
    fn give(&mut self, begun: &[usize], earlier: f64) {
        for step in begun {
            self.aside += self.to_teach(*step);
            let lessons = &self.programme.steps[*step].lessons;
            let minutes = lessons
                .iter()
                .map(|lesson| self.programme.lesson_minutes[*lesson]);
            self.so_far.given[*step] = minutes.sum();
        }
        self.aside -= earlier;
        let due = self.due.filter(|due| begun.first() == Some(&due.step));
        if let Some((at, _)) = due.and_then(|due| due.stretch) {
            self.so_far.stretches[at].worked.minutes -= earlier;
        }
    }

    /// The bays of this report were told of now; the others when they were before.
    fn remember(&mut self) {
        let now = self.so_far.now;
        for (bay, last) in self.last.iter_mut().enumerate() {
            if last.clock.is_nan() {
                *last = Last {
                    clock: now,
                    aside: self.aside,
                    done: self.so_far.done.iter().map(|done| done[bay]).collect(),
                };
            }
        }
    }
}
