//! The length an `auto` wall gets: what asks for more, what allows no more, what decides.

use crate::quantity::{FOOT_M, Length, Units, metres};

/// The longest wall that is ever tried.
pub(crate) const LONGEST_M: f64 = 400.0;

/// A reason for a length.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Binding {
    /// Room for the group at the wall.
    ElbowRoom,
    /// What can be built in the hours with the chance wished for.
    Pace,
    /// The stone that can be had.
    Stone,
    /// The frames in stock.
    Frames,
    /// The room the site has.
    Site,
    /// The instructor's word.
    Given,
}

impl Binding {
    /// The word a plan uses for it.
    pub fn word(self) -> &'static str {
        match self {
            Self::ElbowRoom => "elbow room",
            Self::Pace => "pace",
            Self::Stone => "stone",
            Self::Frames => "frames",
            Self::Site => "site",
            Self::Given => "given",
        }
    }
}

/// Whether a limit asks for more or allows no more.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Bound {
    /// At least so long.
    Least,
    /// At most so long.
    Most,
}

/// One limit on the length.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Limit {
    /// The reason.
    pub limit: Binding,
    /// Its direction.
    pub bound: Bound,
    /// The length at which it bites.
    pub length: Length,
}

/// The length, what decided it, and everything that had a say.
#[derive(Debug, Clone, PartialEq)]
pub struct Sizing {
    /// The length to build.
    pub length: Length,
    /// What set it.
    pub binding: Binding,
    /// All limits.
    pub limits: Vec<Limit>,
    /// Why a given line could not be made as long as the limits ask, and so stayed as it is.
    pub kept: Option<Kept>,
}

/// Why a line that was to be sized stayed as it is given.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Kept {
    /// It has no straight that could be stretched or shortened.
    NoStraight {
        /// What the limits allow.
        allowed: Length,
    },
    /// It comes round to where it began, and would not if it were stretched.
    Closed {
        /// What the limits allow.
        allowed: Length,
    },
    /// Its other stretches alone are longer than the limits allow.
    OthersTooLong {
        /// All stretches but the last straight.
        others: Length,
        /// What the limits allow.
        allowed: Length,
    },
}

impl Sizing {
    /// The length that keeps within `limits`: the least of the greatest, rounded down to
    /// 0.25 m or 1 ft, and never less than one such step. Where a given length is `Some`,
    /// that is the length and the limits only inform.
    pub fn of(limits: Vec<Limit>, given: Option<Length>, units: Units) -> Self {
        if let Some(length) = given {
            return Self {
                length,
                binding: Binding::Given,
                limits,
                kept: None,
            };
        }
        let tightest = limits
            .iter()
            .filter(|limit| limit.bound == Bound::Most)
            .min_by(|a, b| a.length.value.total_cmp(&b.length.value));
        let (length, binding) = tightest.map_or((step(units), Binding::Pace), |limit| {
            (limit.length, limit.limit)
        });
        Self {
            length: rounded_down(length, units),
            binding,
            limits,
            kept: None,
        }
    }

    /// The least length asked for that the answer falls short of.
    pub fn falls_short_of(&self) -> Option<Limit> {
        self.limits
            .iter()
            .copied()
            .find(|limit| limit.bound == Bound::Least && self.length < limit.length - metres(1e-9))
    }
}

/// The step lengths are rounded down to.
pub fn step(units: Units) -> Length {
    match units {
        Units::Metric => metres(0.25),
        Units::Imperial => metres(FOOT_M),
    }
}

/// Down to a whole number of steps, but never to nothing.
pub fn rounded_down(length: Length, units: Units) -> Length {
    let step = step(units);
    let steps = (length / step).value;
    // A length that is a whole number of steps but for rounding keeps its last step.
    step * (steps + 1e-9).floor().max(1.0)
}

/// The longest length at which `holds`, to within `fineness`, if it holds for every shorter
/// one; 0 m if it holds for none. The search begins at `near`, where the answer is likely.
pub fn longest(near: Length, fineness: Length, mut holds: impl FnMut(Length) -> bool) -> Length {
    let most = metres(LONGEST_M);
    let (mut good, mut bad) = (metres(0.0), if near < most { near } else { most });
    while holds(bad) {
        if most <= bad {
            return most;
        }
        good = bad;
        bad = if bad * 2.0 < most { bad * 2.0 } else { most };
    }
    while fineness < bad - good {
        let middle = (good + bad) / 2.0;
        if holds(middle) {
            good = middle;
        } else {
            bad = middle;
        }
    }
    good
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Read;

    #[test]
    fn the_least_of_the_greatest_decides() {
        let limits = vec![
            Limit {
                limit: Binding::ElbowRoom,
                bound: Bound::Least,
                length: metres(6.0),
            },
            Limit {
                limit: Binding::Pace,
                bound: Bound::Most,
                length: metres(9.3),
            },
            Limit {
                limit: Binding::Frames,
                bound: Bound::Most,
                length: metres(9.0),
            },
        ];
        let sizing = Sizing::of(limits.clone(), None, Units::Metric);
        assert!((sizing.length.si() - 9.0).abs() < 1e-9);
        assert_eq!(sizing.binding, Binding::Frames);
        assert_eq!(sizing.falls_short_of(), None);
        let given = Sizing::of(limits, Some(metres(5.0)), Units::Metric);
        assert_eq!(given.binding, Binding::Given);
        assert_eq!(
            given.falls_short_of().map(|limit| limit.limit),
            Some(Binding::ElbowRoom)
        );
    }

    #[test]
    fn the_longest_that_holds_is_found_to_a_millimetre() {
        for edge in [0.4, 3.217, 11.0, 250.0] {
            let found = longest(metres(6.0), metres(0.001), |length| length.si() <= edge).si();
            assert!(
                found <= edge && edge - found <= 0.001 + 1e-9,
                "{edge}: {found}"
            );
        }
        let always = longest(metres(6.0), metres(0.001), |_| true);
        assert!((always.si() - 400.0).abs() < 1e-9);
        assert!(longest(metres(6.0), metres(0.001), |_| false).si().abs() < 0.002);
    }
}
