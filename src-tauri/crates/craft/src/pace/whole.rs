//! All there is to do at a wall, and where along it: what was done at one wall is counted on
//! another, since a wall is made lower, shorter or longer while it is being built.

use super::programme::{Programme, Step};
use crate::quantity::{Length, Read};

/// Shares as near to all as this are all: how much there is to the metre is told in the middle of
/// each bay, and on uneven ground the middles of two walls' bays differ a little.
const ALL: f64 = 0.98;

/// A programme, and how its bays lie along the wall.
#[derive(Debug, Clone, PartialEq)]
pub struct Whole {
    /// What there is to do.
    pub programme: Programme,
    /// Where its bays begin and end, one more than there are bays.
    pub stations: Vec<Length>,
    /// How much of each step there is to the metre, bay by bay, in any unit.
    pub dense: Vec<Vec<f64>>,
}

impl Whole {
    /// The shares done at this wall as shares of what there is to do at `other`, step by step
    /// and bay by bay.
    ///
    /// Work counts where it lies: `share = Σ overlap · min(1, share here · dense here / dense
    /// there) / length of the bay there`, over the bays here. Nothing is taken down again, so
    /// that what is too much for a smaller wall is all of it.
    pub fn shares_at(&self, other: &Self, done: &[Vec<f64>]) -> Vec<Vec<f64>> {
        let steps = other.programme.steps.iter().zip(&other.dense);
        steps
            .map(|(step, there)| {
                let Some(own) = self.place_of(step) else {
                    return vec![0.0; other.programme.bays];
                };
                let share = |bay: usize| {
                    let covered = self.covers(other, bay);
                    let shares = covered.map(|(at, part)| {
                        let amount = done[own][at] * self.dense[own][at];
                        part * if 0.0 < amount {
                            (amount / there[bay]).min(1.0)
                        } else {
                            0.0
                        }
                    });
                    let share: f64 = shares.sum();
                    if ALL <= share { 1.0 } else { share }
                };
                (0..other.programme.bays).map(share).collect()
            })
            .collect()
    }

    /// The step of this programme that is the same work as one of another.
    pub fn place_of(&self, step: &Step) -> Option<usize> {
        let steps = &mut self.programme.steps.iter();
        steps.position(|it| it.stage == step.stage)
    }

    /// The minutes given of the lessons before each step, as they count at `other`.
    pub fn given_at(&self, other: &Self, given: &[f64]) -> Vec<f64> {
        let steps = other.programme.steps.iter();
        steps
            .map(|step| {
                let own = self.place_of(step);
                let same = own.filter(|own| self.programme.steps[*own].lessons == step.lessons);
                same.map_or(0.0, |own| given[own])
            })
            .collect()
    }

    /// The bay of this wall that most of a bay of another lies in; none where it is all new.
    pub fn bay_of(&self, other: &Self, bay: usize) -> Option<usize> {
        let covers = self.covers(other, bay);
        covers
            .max_by(|(_, one), (_, two)| one.total_cmp(two))
            .map(|(at, _)| at)
    }

    /// The bays of this wall that a bay of another lies in, each with the part of it.
    fn covers(&self, other: &Self, bay: usize) -> impl Iterator<Item = (usize, f64)> {
        let [from, to] = other.bay(bay);
        (0..self.programme.bays).filter_map(move |at| {
            let [begins, ends] = self.bay(at);
            let part = (to.min(ends) - from.max(begins)) / (to - from);
            (0.0 < part).then_some((at, part))
        })
    }

    fn bay(&self, at: usize) -> [f64; 2] {
        [self.stations[at].si(), self.stations[at + 1].si()]
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::pace::built::tests::{self as built, programme};
    use proptest::prelude::*;

    /// The programme of those tests at a wall with bays between these stations.
    fn whole(stations: &[f64], dense: f64) -> Whole {
        let mut programme = programme();
        programme.bays = stations.len() - 1;
        for step in &mut programme.steps {
            step.usual = vec![step.usual[0]; programme.bays];
        }
        let mut whole = built::whole(programme, stations);
        whole.dense.iter_mut().for_each(|step| step.fill(dense));
        whole
    }

    /// By hand, for one step: bays of the old wall, shares of them, how much more of it there is
    /// to the metre, bays of the new wall, shares of those.
    #[test]
    fn work_counts_where_it_lies() {
        type Row<'a> = (&'a [f64], &'a [f64], f64, &'a [f64], &'a [f64]);
        let rows: [Row<'_>; 6] = [
            (&[0., 3., 6.], &[1.0, 0.4], 1.0, &[0., 3., 6.], &[1.0, 0.4]),
            // The last bay is left out, or shortened.
            (&[0., 3., 6.], &[0.5, 0.0], 1.0, &[0., 3.], &[0.5]),
            (&[0., 3., 6.], &[1.0, 0.4], 1.0, &[0., 3., 5.], &[1.0, 0.4]),
            // The last bay is half as long again, and one is put to it.
            (
                &[0., 3., 5.],
                &[1.0, 1.0],
                1.0,
                &[0., 3., 6., 9.],
                &[1.0, 2. / 3., 0.0],
            ),
            // Four fifths of it are left to the metre of a lower wall.
            (&[0., 3., 6.], &[0.4, 0.9], 1.25, &[0., 3., 6.], &[0.5, 1.0]),
            // A wall is raised by a quarter.
            (&[0., 3., 6.], &[1.0, 0.5], 0.8, &[0., 3., 6.], &[0.8, 0.4]),
        ];
        for (from, done, denser, to, then) in rows {
            let (old, new) = (whole(from, denser), whole(to, 1.0));
            let done = vec![done.to_vec(); old.programme.steps.len()];
            let shares = old.shares_at(&new, &done);
            for step in shares {
                for (share, then) in step.iter().zip(then) {
                    assert!((share - then).abs() < 1e-12, "{from:?} {to:?}: {step:?}");
                }
            }
        }
    }

    proptest! {
        /// A share stays one, and what is done is not made more or less by cutting bays anew.
        #[test]
        fn metres_done_stay_metres_done(
            cuts in prop::collection::vec(0.5..4.0f64, 1..6),
            bays in 1..6usize,
            shares in prop::collection::vec(0.0..=1.0f64, 6),
        ) {
            let mut at = 0.0;
            let mut from = vec![0.0];
            from.extend(cuts.iter().map(|cut| { at += cut; at }));
            let to: Vec<f64> = (0..=bays).map(|bay| at * bay as f64 / bays as f64).collect();
            let (old, new) = (whole(&from, 1.0), whole(&to, 1.0));
            let done = vec![shares[..cuts.len()].to_vec(); old.programme.steps.len()];
            let moved = old.shares_at(&new, &done);
            let metres = |shares: &[f64], stations: &[f64]| -> f64 {
                let bays = stations.windows(2).zip(shares);
                bays.map(|(bay, share)| share * (bay[1] - bay[0])).sum()
            };
            prop_assert!(moved[0].iter().all(|share| (0.0..=1.0).contains(share)));
            let (before, after) = (metres(&done[0], &from), metres(&moved[0], &to));
            // What is nearly all of a bay counts as all of it.
            let nearly = (1.0 - ALL) * at + 1e-9;
            prop_assert!((before - after).abs() < nearly, "{before} {after}");
        }
    }
}
