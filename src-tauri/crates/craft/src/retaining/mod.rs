//! Retaining walls: a simple check against tipping and sliding, for teaching and no more.
//!
//! It shows a class what batter, width, a rough back and a load above do to a wall. It
//! approves nothing: real banks are wet, layered and loaded, and dry stone bulges before it
//! tips. What it takes for granted stands in `lessons/tables/retaining.toml` and belongs
//! beside every figure it gives.

mod behind;
mod pressure;
mod stability;

pub use behind::Retaining;
pub use pressure::{Angles, rankine};
pub use stability::Profile;

use crate::Error;
use crate::quantity::{Density, Length, Read};
use crate::wall::{Section, Side};
use pressure::within;

/// What stands behind a wall, and what it stands on.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bank {
    /// Height of the fill against the back, from the ground in front.
    pub retained: Length,
    /// The fill as it lies, with its air and its damp.
    pub fill: Density,
    /// Friction within the fill.
    pub friction_degrees: f64,
    /// Friction between the fill and the back of the wall.
    pub wall_friction_degrees: f64,
    /// The bank's surface from level, rising from the wall.
    pub slope_degrees: f64,
    /// A load spread alike over the bank, in kPa (kN on each level square metre).
    pub load_kpa: f64,
    /// Friction between the base and the ground.
    pub base_friction_degrees: f64,
}

impl Bank {
    /// Refuses what is not a bank behind a wall of this height. The ranges keep out slips of
    /// the pen and unlike units (common practice, no source).
    fn hold(&self, wall: Length) -> Result<(), Error> {
        let (key, given) = ("wall.bank.height", self.retained);
        if given.si() <= 0.0 || !given.si().is_finite() {
            return Err(Error::NotPositive { key, given });
        }
        if wall.si() + 1e-9 < given.si() {
            return Err(Error::BankAboveWall {
                retained: given,
                height: wall,
                units: None,
            });
        }
        let kg_m3 = self.fill.si();
        within("wall.bank.fill", "kg/m3", kg_m3, 500.0..=3000.0)?;
        within("wall.bank.load_kpa", "kPa", self.load_kpa, 0.0..=100.0)?;
        within(
            "wall.bank.base_friction_degrees",
            "degrees",
            self.base_friction_degrees,
            5.0..=60.0,
        )
    }
}

/// What the check finds for one metre of wall.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Check {
    /// From toe to heel, at the ground.
    pub base_width: Length,
    /// Coulomb's active coefficient, no unit.
    pub ka: f64,
    /// Weight of the wall, in kN to the metre.
    pub weight_kn_m: f64,
    /// The level part of the thrust, in kN to the metre.
    pub across_kn_m: f64,
    /// The upright part of the thrust, in kN to the metre: more than zero where it presses
    /// the wall down, less where it lifts.
    pub down_kn_m: f64,
    /// Where the thrust meets the back, above the ground in front.
    pub thrust_height: Length,
    /// Moments that hold the wall over those that tip it, about the toe.
    pub overturning: f64,
    /// Friction under the base over the level thrust.
    pub sliding: f64,
    /// Where the resultant meets the base, as a share of it from the toe: at 0.5 the base is
    /// loaded alike, below 0 the wall tips; beyond 1 it leans on its bank. `None` if the
    /// thrust lifts the wall off its base.
    pub resultant_share: Option<f64>,
    /// Pressure on the ground under the toe, in kPa; `None` if the resultant falls in front.
    pub toe_pressure_kpa: Option<f64>,
}

impl Check {
    /// Thrust on the back, in kN to the metre.
    pub fn thrust_kn_m(&self) -> f64 {
        self.across_kn_m.hypot(self.down_kn_m)
    }

    /// Whether the resultant meets the base within its middle third, so that no part of it
    /// would have to hold the ground by pulling.
    pub fn in_middle_third(&self) -> bool {
        self.resultant_share
            .is_some_and(|share| (1.0 / 3.0..=2.0 / 3.0).contains(&share))
    }

    /// How the two safeties stand against the limits. Above both is no approval.
    pub fn verdict(&self, limits: &Limits) -> Verdict {
        let tips = self.overturning < limits.overturning;
        let slides = self.sliding < limits.sliding;
        match (tips, slides) {
            (false, false) => Verdict::AboveBoth,
            (true, false) => Verdict::BelowOverturning,
            (false, true) => Verdict::BelowSliding,
            (true, true) => Verdict::BelowBoth,
        }
    }
}

/// Where the two safeties lie against the teaching limits.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Verdict {
    /// Neither is below its limit.
    AboveBoth,
    /// Overturning alone is below.
    BelowOverturning,
    /// Sliding alone is below.
    BelowSliding,
    /// Both are below.
    BelowBoth,
}

/// The limits of the table `retaining.toml`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Limits {
    /// Least safety against overturning.
    pub overturning: f64,
    /// Least safety against sliding.
    pub sliding: f64,
    /// Least base width for each unit of height.
    pub base_share: f64,
    /// Higher than this, from the bottom of the footing, a permit is usually needed.
    pub permit_height: Length,
}

impl Limits {
    /// Whether a wall this high, from the bottom of its footing to its top with the cope, is
    /// past what is usually free of a permit: by its height, or because the bank carries a
    /// load at any height. A boundary or a building near by, which no figure here tells of,
    /// asks for the same.
    pub fn must_ask(&self, from_footing: Length, bank: &Bank) -> bool {
        self.permit_height < from_footing || 0.0 < bank.load_kpa
    }
}

/// The check of one metre of a planned wall with the bank on one side: body alone, without
/// footing and cope, tipping about the toe of the body's front face. `built` is the density
/// of the wall as it stands, its air included.
///
/// # Errors
/// [`Error::NotPositive`] or [`Error::BankAboveWall`] for the height of the bank,
/// [`Error::BankFigure`] for a figure no bank has, [`Error::BankTooSteep`],
/// [`Error::BackTooFlat`].
///
/// # Source
/// Statics of a rigid body under Coulomb's thrust. Worked cases:
/// `tests/tables/trial_walls.csv`.
pub fn check(
    section: &Section,
    bank_side: Side,
    bank: &Bank,
    built: Density,
) -> Result<Check, Error> {
    Profile::of(section, bank_side).check(bank, built)
}

/// Base width for each unit of height.
pub fn base_share(section: &Section) -> f64 {
    section.base_width().si() / section.height().si()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{kg_per_m3, metres};
    use crate::wall::Batter;

    fn limits() -> Limits {
        Limits {
            overturning: 1.5,
            sliding: 1.5,
            base_share: 0.5,
            permit_height: metres(1.2),
        }
    }

    fn bank() -> Bank {
        Bank {
            retained: metres(1.0),
            fill: kg_per_m3(1800.0),
            friction_degrees: 30.0,
            wall_friction_degrees: 20.0,
            slope_degrees: 0.0,
            load_kpa: 0.0,
            base_friction_degrees: 30.0,
        }
    }

    fn wall(top: f64) -> Section {
        let front = Batter::one_in(6.0).expect("sound");
        Section::new(metres(1.0), metres(top), front, Batter::PLUMB).expect("sound")
    }

    fn found(top: f64, bank: &Bank) -> Result<Check, Error> {
        check(&wall(top), Side::Right, bank, kg_per_m3(1875.0))
    }

    #[test]
    fn a_stout_wall_lies_above_both_and_a_slight_one_below() {
        let stout = found(0.5, &bank()).expect("sound");
        assert_eq!(stout.verdict(&limits()), Verdict::AboveBoth);
        assert!(stout.in_middle_third());
        let mut smooth = bank();
        smooth.wall_friction_degrees = 0.0;
        let slight = found(0.1, &smooth).expect("sound");
        assert_eq!(slight.verdict(&limits()), Verdict::BelowBoth);
        let mut on_clay = bank();
        on_clay.base_friction_degrees = 10.0;
        let slips = found(0.5, &on_clay).expect("sound");
        assert_eq!(slips.verdict(&limits()), Verdict::BelowSliding);
        on_clay.base_friction_degrees = 60.0;
        on_clay.wall_friction_degrees = 0.0;
        let tips = found(0.1, &on_clay).expect("sound");
        assert_eq!(tips.verdict(&limits()), Verdict::BelowOverturning);
    }

    #[test]
    fn every_safety_of_a_wider_wall_is_greater() {
        let mut last = found(0.15, &bank()).expect("sound");
        for top in [0.2, 0.3, 0.45, 0.6] {
            let wider = found(top, &bank()).expect("sound");
            assert!(last.overturning < wider.overturning && last.sliding < wider.sliding);
            last = wider;
        }
    }

    #[test]
    fn half_the_height_is_a_half() {
        assert!((base_share(&wall(1.0 / 3.0)) - 0.5).abs() < 1e-12);
    }

    #[test]
    fn height_or_a_load_must_be_asked_about() {
        assert!(!limits().must_ask(metres(1.2), &bank()));
        assert!(limits().must_ask(metres(1.21), &bank()));
        let mut loaded = bank();
        loaded.load_kpa = 2.5;
        assert!(limits().must_ask(metres(0.5), &loaded));
    }

    #[test]
    fn a_bank_that_is_none_is_refused() {
        let code = |change: fn(&mut Bank)| {
            let mut bank = bank();
            change(&mut bank);
            found(0.5, &bank).expect_err("no bank").code()
        };
        assert_eq!(code(|bank| bank.retained = metres(0.0)), "not-positive");
        assert_eq!(
            code(|bank| bank.retained = metres(f64::NAN)),
            "not-positive"
        );
        assert_eq!(code(|bank| bank.retained = metres(1.1)), "bank-above-wall");
        assert_eq!(code(|bank| bank.fill = kg_per_m3(18.0)), "bank-figure");
        assert_eq!(code(|bank| bank.load_kpa = -1.0), "bank-figure");
        assert_eq!(code(|bank| bank.load_kpa = f64::NAN), "bank-figure");
        assert_eq!(
            code(|bank| bank.base_friction_degrees = 90.0),
            "bank-figure"
        );
        assert_eq!(code(|bank| bank.slope_degrees = 30.0), "bank-too-steep");
    }

    /// Word for word, for the sentences are part of what people get.
    #[test]
    fn refusals_read_as_sentences() {
        let said = |change: fn(&mut Bank)| {
            let mut bank = bank();
            change(&mut bank);
            found(0.5, &bank).expect_err("no bank").to_string()
        };
        assert_eq!(
            said(|bank| bank.slope_degrees = 34.0),
            "a bank that rises at 34 degrees can't stand in fill whose friction angle is 30 degrees"
        );
        assert_eq!(
            said(|bank| bank.retained = metres(1.3)),
            "the bank is 1.30 m high, which is more than the wall's 1.00 m"
        );
        assert_eq!(
            said(|bank| bank.friction_degrees = 60.0),
            "this must be from 15 to 50 degrees; it is 60"
        );
    }
}
