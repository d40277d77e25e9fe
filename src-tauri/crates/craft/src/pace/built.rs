//! What has been built so far, as it was told on the day, and how long it took.

use super::calendar::Calendar;
use super::programme::{Programme, Step};

/// Less than so many usual minutes say nothing of pace.
const LEAST: f64 = 5.0;

/// More than so many times quicker than usual can't be.
pub const QUICKEST: f64 = 10.0;

/// A report put to the programme.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Told {
    /// When, on the clock.
    pub clock: f64,
    /// Which step of the programme.
    pub step: usize,
    /// Which bay; all of them if it is not said.
    pub bay: Option<usize>,
    /// The share that is done.
    pub done: f64,
}

impl Told {
    /// Puts it to the shares done, step by step and bay by bay. What is done of a step is done
    /// of every step before it.
    pub fn apply(&self, done: &mut [Vec<f64>]) {
        let bays = done.first().map_or(0, Vec::len);
        for bay in (0..bays).filter(|bay| self.bay.is_none_or(|told| told == *bay)) {
            if 0.0 < self.done {
                for step in &mut done[..self.step] {
                    step[bay] = 1.0;
                }
            }
            done[self.step][bay] = self.done;
        }
    }
}

/// Work between two reports.
#[derive(Debug, Clone, PartialEq)]
pub struct Stretch {
    /// Working minutes that went by, lessons and fixed times taken out.
    pub minutes: f64,
    /// Usual minutes of what was done, step by step, beginners' learning with them.
    pub usual: Vec<f64>,
    /// The share of the bays it tells of.
    pub share: f64,
}

/// How far the wall has come.
#[derive(Debug, Clone, PartialEq)]
pub struct SoFar {
    /// The time of the last report, on the clock.
    pub now: f64,
    /// The share done, step by step and bay by bay.
    pub done: Vec<Vec<f64>>,
    /// What the reports tell of pace.
    pub stretches: Vec<Stretch>,
}

/// A report that can't be: so much can't have been done in that time.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TooSoon {
    /// Its place among the reports.
    pub report: usize,
    /// Working minutes that went by.
    pub minutes: f64,
    /// Minutes it usually takes.
    pub usual: f64,
}

impl SoFar {
    /// Adds up the reports, which stand in order of time.
    ///
    /// # Errors
    /// [`TooSoon`] for work done more than [`QUICKEST`] times quicker than usual.
    pub fn of(
        programme: &Programme,
        is_fixed: impl Fn(&Step) -> bool,
        calendar: &Calendar,
        told: &[Told],
    ) -> Result<Self, TooSoon> {
        let fixed = programme.steps.iter().map(is_fixed).collect();
        let mut telling = Telling::new(programme, fixed, calendar);
        let mut from = 0;
        while let Some(first) = told.get(from) {
            let same = |it: &&Told| (it.clock - first.clock).abs() < 1e-9;
            let count = told[from..].iter().take_while(same).count();
            telling.hear(&told[from..from + count], from)?;
            from += count;
        }
        Ok(telling.so_far)
    }

    /// Whether anything of a step has been begun.
    pub fn begun(&self, step: usize) -> bool {
        self.done[step].iter().any(|done| 0.0 < *done)
    }

    /// What is left to do. Lessons that have been given, and steps that are done, are left out.
    pub fn left(&self, programme: &Programme) -> Programme {
        let mut left = programme.clone();
        for (number, step) in left.steps.iter_mut().enumerate() {
            for (usual, done) in step.usual.iter_mut().zip(&self.done[number]) {
                *usual *= 1.0 - done;
            }
            if self.begun(number) {
                step.lessons.clear();
            }
            step.after = step.after.filter(|(_, clock)| self.now < *clock);
        }
        let mut number = 0;
        left.steps.retain(|_| {
            number += 1;
            self.done[number - 1].iter().any(|done| *done < 1.0)
        });
        left.laid = self.laid(programme);
        left
    }

    /// Usual minutes of laying behind each bay.
    fn laid(&self, programme: &Programme) -> Vec<f64> {
        let laying = programme.steps.iter().zip(&self.done);
        let mut laid = vec![0.0; programme.bays];
        for (step, done) in laying.filter(|(step, _)| step.laying) {
            for (laid, (usual, done)) in laid.iter_mut().zip(step.usual.iter().zip(done)) {
                *laid += usual * done;
            }
        }
        laid
    }
}

/// Reports being added up.
struct Telling<'a> {
    programme: &'a Programme,
    fixed: Vec<bool>,
    calendar: &'a Calendar,
    so_far: SoFar,
    /// Minutes of lessons given so far.
    taught: f64,
    /// For each bay, when it was last told of and what had been taught then.
    last: Vec<(f64, f64)>,
}

impl<'a> Telling<'a> {
    fn new(programme: &'a Programme, fixed: Vec<bool>, calendar: &'a Calendar) -> Self {
        let begins = calendar.begins();
        Self {
            programme,
            fixed,
            calendar,
            so_far: SoFar {
                now: begins,
                done: vec![vec![0.0; programme.bays]; programme.steps.len()],
                stretches: Vec::new(),
            },
            taught: 0.0,
            last: vec![(begins, 0.0); programme.bays],
        }
    }

    /// Takes in all reports of one time; the first of them has this number.
    fn hear(&mut self, told: &[Told], number: usize) -> Result<(), TooSoon> {
        let before = self.so_far.clone();
        for report in told {
            report.apply(&mut self.so_far.done);
            self.so_far.now = report.clock;
        }
        for (step, given) in self.programme.steps.iter().enumerate() {
            if !before.begun(step) && self.so_far.begun(step) {
                let minutes = given.lessons.iter();
                let minutes = minutes.map(|lesson| self.programme.lesson_minutes[*lesson]);
                self.taught += minutes.sum::<f64>();
            }
        }
        let changed: Vec<usize> = (0..self.programme.bays)
            .filter(|bay| self.changed(&before, *bay))
            .collect();
        let mut heard: Vec<(f64, f64)> = changed.iter().map(|bay| self.last[*bay]).collect();
        heard.sort_by(|a, b| a.0.total_cmp(&b.0));
        heard.dedup();
        for last in heard {
            let since = |bay: &&usize| (self.last[**bay].0 - last.0).abs() < 1e-9;
            let bays: Vec<usize> = changed.iter().filter(since).copied().collect();
            let (stretch, went_by, fixed) = self.stretch(&before, &bays, last);
            let usual: f64 = stretch.usual.iter().sum();
            if went_by * QUICKEST < usual + fixed && LEAST < usual + fixed {
                return Err(TooSoon {
                    report: number,
                    minutes: went_by.max(0.0),
                    usual: usual + fixed,
                });
            }
            if usual < LEAST {
                continue;
            }
            self.so_far.stretches.push(stretch);
        }
        for bay in changed {
            self.last[bay] = (self.so_far.now, self.taught);
        }
        Ok(())
    }

    fn changed(&self, before: &SoFar, bay: usize) -> bool {
        let steps = self.so_far.done.iter().zip(&before.done);
        steps.into_iter().any(|(now, then)| then[bay] < now[bay])
    }

    /// What these bays tell since they were last told of, the working minutes that went by, and
    /// those of them that took a fixed time.
    fn stretch(
        &self,
        before: &SoFar,
        bays: &[usize],
        (last, taught): (f64, f64),
    ) -> (Stretch, f64, f64) {
        let count = bays.len() as f64;
        let laid = [
            before.laid(self.programme),
            self.so_far.laid(self.programme),
        ];
        let laying: f64 = bays.iter().map(|bay| laid[1][*bay] - laid[0][*bay]).sum();
        let adds = |at: usize, bay: &usize| self.programme.learning.adds(laid[at][*bay]);
        let learning: f64 = bays.iter().map(|bay| adds(1, bay) - adds(0, bay)).sum();
        let slower = if 0.0 < laying {
            1.0 + learning / laying
        } else {
            1.0
        };
        let mut fixed = 0.0;
        let mut usual = vec![0.0; self.programme.steps.len()];
        for (number, step) in self.programme.steps.iter().enumerate() {
            let done = |bay: &usize| self.so_far.done[number][*bay] - before.done[number][*bay];
            let minutes = bays.iter().map(|bay| step.usual[*bay] * done(bay).max(0.0));
            let minutes = minutes.sum::<f64>() / count;
            if self.fixed[number] {
                fixed += minutes;
            } else {
                usual[number] = minutes * if step.laying { slower } else { 1.0 };
            }
        }
        let clock = self.calendar.working_at(self.so_far.now) - self.calendar.working_at(last);
        let went_by = clock - (self.taught - taught);
        let all: f64 = usual.iter().sum();
        // Who pegs the line in less than its time has not built the rest in none.
        let minutes = if fixed + all / QUICKEST < went_by {
            went_by - fixed
        } else {
            went_by * all / (all + fixed)
        };
        let share = count / self.programme.bays as f64;
        let stretch = Stretch {
            minutes,
            usual,
            share,
        };
        (stretch, went_by, fixed)
    }
}
