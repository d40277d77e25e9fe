//! What a report says was done in some bays since they were last told of.

use super::built::Told;
use super::programme::Programme;

/// A share of a stage is told to about this much of the stage: "a third", "nearly half". Common
/// practice, no source.
const MISREAD: f64 = 0.05;

/// A bay when it was last told of.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Last {
    /// When, on the clock.
    pub(super) clock: f64,
    /// What had gone into lessons and waiting by then.
    pub(super) aside: f64,
    /// The share done, step by step.
    pub(super) done: Vec<f64>,
}

/// What is known when it is told.
pub(super) struct Asked<'a> {
    pub(super) programme: &'a Programme,
    /// Which steps go by the clock.
    pub(super) fixed: &'a [bool],
    pub(super) last: &'a [Last],
    /// The share done now, step by step and bay by bay.
    pub(super) done: &'a [Vec<f64>],
    /// The reports of this time, each with its number.
    pub(super) told: &'a [(usize, Told)],
}

/// What some bays say of the time since they were last told of.
pub(super) struct Said {
    /// Usual minutes, step by step, beginners' learning with them.
    pub(super) usual: Vec<f64>,
    /// The share of each step in them; where nothing was done, it is the stage at work.
    pub(super) weights: Vec<f64>,
    /// Minutes by the clock, step by step.
    pub(super) fixed: Vec<f64>,
    /// Usual minutes by which shares read by eye may be off.
    pub(super) misread: f64,
}

impl Said {
    pub(super) fn of(asked: &Asked<'_>, bays: &[usize]) -> Self {
        let steps = &asked.programme.steps;
        let slower = asked.slower(bays);
        let mut said = Self {
            usual: vec![0.0; steps.len()],
            weights: vec![0.0; steps.len()],
            fixed: vec![0.0; steps.len()],
            misread: 0.0,
        };
        for (at, step) in steps.iter().enumerate() {
            let mean = |of: &dyn Fn(usize) -> f64| {
                let minutes = bays.iter().map(|bay| step.usual[*bay] * of(*bay));
                minutes.sum::<f64>() / bays.len() as f64
            };
            let minutes = mean(&|bay| (asked.done[at][bay] - asked.last[bay].done[at]).max(0.0));
            if asked.fixed[at] {
                said.fixed[at] = minutes;
                continue;
            }
            said.usual[at] = minutes * if step.laying { slower } else { 1.0 };
            let part = |share: f64| 0.0 < share && share < 1.0;
            let read = |bay: usize| part(asked.done[at][bay]) || part(asked.last[bay].done[at]);
            said.misread += (MISREAD * mean(&|bay| f64::from(read(bay)))).powi(2);
        }
        said.misread = said.misread.sqrt();
        said.weigh(asked);
        said
    }

    fn weigh(&mut self, asked: &Asked<'_>) {
        let all: f64 = self.usual.iter().sum();
        let mut told = asked.told.iter().map(|(_, it)| it.step);
        if 0.0 < all {
            self.weights = self.usual.iter().map(|usual| usual / all).collect();
        } else if let Some(step) = told.find(|step| !asked.fixed[*step]) {
            self.weights[step] = 1.0;
        } else {
            self.misread = 0.0;
        }
    }
}

impl Asked<'_> {
    /// How many times longer beginners' learning made the laying of these bays.
    fn slower(&self, bays: &[usize]) -> f64 {
        let (mut laying, mut learning) = (0.0, 0.0);
        let adds = |laid: f64| self.programme.learning.adds(laid);
        for bay in bays {
            let steps = self.programme.steps.iter().enumerate();
            let (mut then, mut now) = (0.0, 0.0);
            for (at, step) in steps.filter(|(_, step)| step.laying) {
                then += step.usual[*bay] * self.last[*bay].done[at];
                now += step.usual[*bay] * self.done[at][*bay];
            }
            laying += (now - then).max(0.0);
            learning += (adds(now) - adds(then)).max(0.0);
        }
        1.0 + if 0.0 < laying { learning / laying } else { 0.0 }
    }
}
