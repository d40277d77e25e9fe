//! What putting two people together is worth: several aims, each counting for more than all
//! after it together.

use crate::course::{Experience, Pairing, Student};
use std::collections::HashSet;

/// The aims in one whole number, the first in the highest bits. Each has room for the sum
/// over as many pairs as are ever weighed together ([`super::blocks::MOST_TOGETHER`]).
///
/// | aim | most for a pair | bits |
/// | --- | --- | --- |
/// | people not to be put together | 1 | 8 |
/// | what the way of pairing puts first | 4 | 10 |
/// | what it puts second | 4 | 10 |
/// | pairs of the first day kept | 1 | 8 |
/// | unevenness of pace | 2^19 | 27 |
/// | distance in the roster, squared | 2^12 | 20 |
/// | luck | 2^30 | 37 |
const APART: u32 = 112;
const FIRST: u32 = 102;
const SECOND: u32 = 92;
const KEPT: u32 = 84;
const UNEVEN: u32 = 57;
const ROSTER: u32 = 37;

/// Steps to which a squared difference of pace is rounded: twice the fastest person's pace is
/// 2^19 of them.
const STEPS: f64 = 131_072.0;

/// What each two of a group are worth together.
pub(super) struct Weights {
    count: usize,
    worth: Vec<i128>,
    apart: Vec<bool>,
}

/// What two people are to each other, as far as pairing asks.
pub(super) struct Two<'a> {
    pub(super) one: &'a Student,
    pub(super) other: &'a Student,
}

impl Two<'_> {
    /// Whether either is not to be put together with the other.
    pub(super) fn apart(&self) -> bool {
        self.one.apart.contains(&self.other.name) || self.other.apart.contains(&self.one.name)
    }

    /// How many of the two wish for the other.
    fn wishes(&self) -> i128 {
        let wish = |who: &Student, whom: &Student| i128::from(who.with.contains(&whom.name));
        wish(self.one, self.other) + wish(self.other, self.one)
    }

    /// Whether a novice builds with someone who has built before.
    fn guided(&self) -> i128 {
        let novice = |student: &Student| student.experience == Experience::Novice;
        i128::from(novice(self.one) != novice(self.other))
    }

    /// Steps of experience between them, squared.
    fn unlike(&self) -> i128 {
        let step = |student: &Student| match student.experience {
            Experience::Novice => 0,
            Experience::Improver => 1,
            Experience::Experienced => 2,
        };
        let between: i128 = step(self.one) - step(self.other);
        between * between
    }

    /// The two aims that the way of pairing puts before all others.
    fn aims(&self, pairing: Pairing) -> (i128, i128) {
        match pairing {
            Pairing::Mixed => (self.guided(), self.wishes()),
            Pairing::Friends => (self.wishes(), self.guided()),
            Pairing::Alike => (-self.unlike(), self.wishes()),
        }
    }
}

impl Weights {
    /// `speeds` is each person's pace, `kept` the pairs that there were on the first day.
    pub(super) fn of(
        people: &[&Student],
        pairing: Pairing,
        speeds: &[f64],
        kept: &HashSet<(&str, &str)>,
    ) -> Self {
        let count = people.len();
        let fastest = speeds.iter().copied().fold(f64::MIN_POSITIVE, f64::max);
        let usual = 2.0 * speeds.iter().sum::<f64>() / count.max(1) as f64;
        let (mut worth, mut apart) = (Vec::new(), Vec::new());
        for (at, (one, speed)) in people.iter().zip(speeds).enumerate() {
            for (beside, (other, its)) in people.iter().zip(speeds).enumerate() {
                let two = Two { one, other };
                let (first, second) = two.aims(pairing);
                let is_kept = [(one, other), (other, one)]
                    .iter()
                    .any(|(a, b)| kept.contains(&(a.name.as_str(), b.name.as_str())));
                apart.push(two.apart());
                worth.push(
                    (first << FIRST) + (second << SECOND) + (i128::from(is_kept) << KEPT)
                        - (i128::from(two.apart()) << APART)
                        - (steps((speed + its - usual) / fastest) << UNEVEN)
                        - (far(at, beside) << ROSTER)
                        - luck(at, beside),
                );
            }
        }
        Self {
            count,
            worth,
            apart,
        }
    }

    /// How many people there are.
    pub(super) fn count(&self) -> usize {
        self.count
    }

    /// What two of them are worth together.
    pub(super) fn worth(&self, one: usize, other: usize) -> i128 {
        let at = one * self.count + other;
        self.worth.get(at).copied().unwrap_or_default()
    }

    /// What it is worth that these two come together as well, because the same person builds
    /// with both.
    pub(super) fn ends(&self, one: usize, other: usize) -> i128 {
        let at = one * self.count + other;
        let apart = self.apart.get(at).copied().unwrap_or_default();
        -(i128::from(apart) << APART)
    }
}

fn steps(off: f64) -> i128 {
    // At most four times STEPS, by the way it is made; a whole number after rounding.
    (off * off * STEPS).round() as i128
}

/// Neighbours in the roster come together where nothing else counts.
fn far(one: usize, other: usize) -> i128 {
    let between = one.abs_diff(other) as i128;
    between * between
}

/// A small cost of its own for every two, so that one answer is the best one whatever order
/// it is looked for in (the isolation lemma of Mulmuley, Vazirani and Vazirani, "Matching is
/// as easy as matrix inversion", 1987). The mixing is the finaliser of SplitMix64 (Steele,
/// Lea and Flood, "Fast splittable pseudorandom number generators", 2014).
fn luck(one: usize, other: usize) -> i128 {
    let two = ((one.min(other) as u64) << 32) | one.max(other) as u64;
    let mut mixed = two.wrapping_add(0x9e37_79b9_7f4a_7c15);
    mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
    mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
    i128::from((mixed ^ (mixed >> 31)) >> 34)
}
