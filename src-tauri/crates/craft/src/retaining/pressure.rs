//! Earth pressure: how hard a dry bank pushes on a wall that gives way a little.
//!
//! Seen in cross-section with the bank on the right, the angles are these:
//!
//! - the back's lean is measured from plumb: more than zero where the back slopes out under
//!   the bank going down, so that the fill rests on it; less than zero where the wall leans
//!   back over the fill;
//! - the bank's slope is measured from level, rising away from the wall;
//! - the thrust stands at the angle of wall friction from square to the back, turned so that
//!   it presses down on the wall: the fill settles against the back.

use crate::Error;
use std::ops::RangeInclusive;

/// Fill outside this is no free-draining earth or stone (common practice, no source).
const FRICTION_DEGREES: RangeInclusive<f64> = 15.0..=50.0;

/// The four angles on which the pressure depends, all in degrees.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Angles {
    /// Friction within the fill.
    pub friction_degrees: f64,
    /// Friction between the fill and the back of the wall.
    pub wall_friction_degrees: f64,
    /// The back from plumb, more than zero where the fill rests on it.
    pub lean_degrees: f64,
    /// The bank's surface from level, rising from the wall.
    pub slope_degrees: f64,
}

impl Angles {
    /// Coulomb's active coefficient: the greatest thrust of any wedge of fill that could
    /// slide down behind the wall is `½ · Ka · unit weight · height²`.
    ///
    /// With φ friction, δ wall friction, θ lean and β slope:
    /// `Ka = cos²(φ − θ) / (cos²θ · cos(δ + θ) · (1 + √(sin(φ + δ) · sin(φ − β) /
    /// (cos(δ + θ) · cos(θ − β))))²)`
    ///
    /// # Errors
    /// [`Error::BankFigure`] for friction that no free-draining fill has, or wall friction
    /// outside nothing to the fill's own; [`Error::BankTooSteep`] for a bank as steep as its
    /// friction angle or steeper; [`Error::BackTooFlat`] for a back so far from plumb that
    /// the fill would slide on fill and not along it.
    ///
    /// # Source
    /// Coulomb's wedge, as any handbook of soil mechanics has it. Worked cases:
    /// `tests/tables/earth_pressure.csv`.
    pub fn coulomb(&self) -> Result<f64, Error> {
        self.hold()?;
        let [friction, wall, lean, slope] = [
            self.friction_degrees,
            self.wall_friction_degrees,
            self.lean_degrees,
            self.slope_degrees,
        ]
        .map(f64::to_radians);
        let tilt = (wall + lean).cos();
        let held = (friction + wall).sin() * (friction - slope).sin();
        let root = (held / (tilt * (lean - slope).cos())).sqrt();
        Ok((friction - lean).cos().powi(2) / (lean.cos().powi(2) * tilt * (1.0 + root).powi(2)))
    }

    /// How much of a load, given for each level square metre of bank, a wedge carries for each
    /// metre of the wall's height: `cos θ · cos β / cos(θ − β)`. It raises the weight of every
    /// wedge in the same proportion, so the worst wedge stays the worst.
    pub(super) fn load_spread(&self) -> f64 {
        let [lean, slope] = [self.lean_degrees, self.slope_degrees].map(f64::to_radians);
        lean.cos() * slope.cos() / (lean - slope).cos()
    }

    /// The farthest a back may lean for the wedge to slide along it: beyond, fill slides on
    /// fill and a part of it stays on the back.
    ///
    /// `45° + β/2 − φ/2 − ½ · asin(sin β / sin φ)`: the steeper of the two slip planes of a
    /// Rankine bank, from plumb. It holds for a perfectly rough back and is strict for a
    /// smoother one.
    fn most_lean_degrees(&self) -> f64 {
        let [friction, slope] = [self.friction_degrees, self.slope_degrees].map(f64::to_radians);
        let spread = (slope.sin() / friction.sin()).asin().to_degrees();
        45.0 + (self.slope_degrees - self.friction_degrees - spread) / 2.0
    }

    fn hold(&self) -> Result<(), Error> {
        bank_stands(self.friction_degrees, self.slope_degrees)?;
        within(
            "wall.bank.wall_friction_degrees",
            "degrees",
            self.wall_friction_degrees,
            0.0..=self.friction_degrees,
        )?;
        let most = self.most_lean_degrees();
        if (-most..=most).contains(&self.lean_degrees) {
            return Ok(());
        }
        Err(Error::BackTooFlat {
            lean_degrees: self.lean_degrees,
            most_degrees: most,
        })
    }
}

/// Rankine's active coefficient, the thrust on an upright plane in the fill and parallel to
/// its surface: `cos β · (cos β − √(cos²β − cos²φ)) / (cos β + √(cos²β − cos²φ))`, on level
/// ground `tan²(45° − φ/2)`. A second opinion on [`Angles::coulomb`] that knows no wall.
///
/// # Errors
/// [`Error::BankFigure`] and [`Error::BankTooSteep`] as there.
///
/// # Source
/// Rankine, as any handbook of soil mechanics has it. Worked cases:
/// `tests/tables/earth_pressure.csv`.
pub fn rankine(friction_degrees: f64, slope_degrees: f64) -> Result<f64, Error> {
    bank_stands(friction_degrees, slope_degrees)?;
    let [friction, slope] = [friction_degrees, slope_degrees].map(|angle| angle.to_radians().cos());
    let root = (slope * slope - friction * friction).sqrt();
    Ok(slope * (slope - root) / (slope + root))
}

/// Refuses a figure outside a range; what is no number is outside every range.
pub(super) fn within(
    key: &'static str,
    unit: &'static str,
    given: f64,
    range: RangeInclusive<f64>,
) -> Result<(), Error> {
    if range.contains(&given) {
        return Ok(());
    }
    Err(Error::BankFigure {
        key,
        unit,
        given,
        least: *range.start(),
        most: *range.end(),
    })
}

fn bank_stands(friction_degrees: f64, slope_degrees: f64) -> Result<(), Error> {
    within(
        "wall.bank.friction_degrees",
        "degrees",
        friction_degrees,
        FRICTION_DEGREES,
    )?;
    within(
        "wall.bank.slope_degrees",
        "degrees",
        slope_degrees,
        0.0..=90.0,
    )?;
    if slope_degrees < friction_degrees {
        return Ok(());
    }
    Err(Error::BankTooSteep {
        slope_degrees,
        friction_degrees,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn angles(friction: f64, wall_friction: f64, lean: f64, slope: f64) -> Angles {
        Angles {
            friction_degrees: friction,
            wall_friction_degrees: wall_friction,
            lean_degrees: lean,
            slope_degrees: slope,
        }
    }

    /// Every combination that a course could meet.
    fn many() -> Vec<Angles> {
        let mut all = Vec::new();
        for friction in [20.0, 28.0, 35.0, 42.0] {
            for wall_friction in [0.0, friction / 2.0, friction] {
                for lean in [-11.0, -4.0, 0.0, 6.0, 11.0] {
                    for slope in [0.0, 5.0, 10.0] {
                        all.push(angles(friction, wall_friction, lean, slope));
                    }
                }
            }
        }
        all
    }

    /// The other road: the wedge between the back and a slip plane at every hundredth of a
    /// degree, its weight from its corners, its thrust from the triangle of three forces.
    /// Wall one high, unit weight one, so without a load the thrust is half the coefficient.
    fn greatest_wedge(angles: &Angles, load: f64) -> f64 {
        let [friction, wall, lean, slope] = [
            angles.friction_degrees,
            angles.wall_friction_degrees,
            angles.lean_degrees,
            angles.slope_degrees,
        ]
        .map(f64::to_radians);
        let top = (-lean.tan(), 1.0);
        let mut greatest = 0.0_f64;
        for step in 0..9000 {
            let plane = (f64::from(step) / 100.0).to_radians();
            let turn = (plane - slope).sin();
            if plane <= friction || turn <= 0.0 {
                continue;
            }
            // Where the slip plane from the heel meets the bank's surface through the top.
            let along = (top.1 * slope.cos() - top.0 * slope.sin()) / turn;
            let far = (along * plane.cos(), along * plane.sin());
            if far.0 <= top.0 {
                continue;
            }
            let weight = 0.5 * (far.0 * top.1 - far.1 * top.0) + load * (far.0 - top.0);
            let thrust = weight * (plane - friction).sin() / (plane - friction - wall - lean).cos();
            greatest = greatest.max(thrust);
        }
        greatest
    }

    #[test]
    fn the_formula_is_the_worst_wedge_that_could_slide() {
        for angles in many() {
            let formula = angles.coulomb().expect("sound angles");
            let wedge = 2.0 * greatest_wedge(&angles, 0.0);
            assert!(
                (formula - wedge).abs() < 1e-5,
                "{angles:?}: {formula}, by wedges {wedge}"
            );
        }
    }

    #[test]
    fn a_load_weighs_on_every_wedge_alike() {
        for angles in many() {
            let load = 0.3;
            let ka = angles.coulomb().expect("sound angles");
            let formula = ka * (0.5 + load * angles.load_spread());
            let wedge = greatest_wedge(&angles, load);
            assert!(
                (formula - wedge).abs() < 1e-5,
                "{angles:?}: {formula}, by wedges {wedge}"
            );
        }
    }

    /// An upright back whose friction equals the slope is Rankine's own plane.
    #[test]
    fn coulomb_and_rankine_meet() {
        for friction in [25.0, 30.0, 40.0] {
            for slope in [0.0, 8.0, 20.0] {
                let coulomb = angles(friction, slope, 0.0, slope).coulomb();
                let rankine = rankine(friction, slope).expect("sound angles");
                assert!((coulomb.expect("sound angles") - rankine).abs() < 1e-12);
            }
        }
    }

    #[test]
    fn a_steeper_bank_and_a_looser_fill_push_harder() {
        for one in many() {
            let ka = one.coulomb().expect("sound angles");
            let mut steeper = one;
            steeper.slope_degrees += 2.0;
            assert!(ka < steeper.coulomb().expect("sound angles"), "{one:?}");
            let mut tighter = one;
            tighter.friction_degrees += 2.0;
            assert!(tighter.coulomb().expect("sound angles") < ka, "{one:?}");
        }
    }

    #[test]
    fn what_the_wedge_says_nothing_about_is_refused() {
        let refused = |friction, wall, lean, slope| {
            angles(friction, wall, lean, slope)
                .coulomb()
                .expect_err("outside")
                .code()
        };
        assert_eq!(refused(30.0, 20.0, 0.0, 30.0), "bank-too-steep");
        assert_eq!(refused(30.0, 20.0, 30.1, 0.0), "back-too-flat");
        assert_eq!(refused(30.0, 20.0, -30.1, 0.0), "back-too-flat");
        assert_eq!(refused(30.0, 20.0, f64::NAN, 0.0), "back-too-flat");
        assert_eq!(refused(30.0, 31.0, 0.0, 0.0), "bank-figure");
        assert_eq!(refused(30.0, -1.0, 0.0, 0.0), "bank-figure");
        assert_eq!(refused(30.0, 20.0, 0.0, -5.0), "bank-figure");
        for friction in [0.0, 14.0, 51.0, f64::NAN, f64::INFINITY] {
            assert_eq!(refused(friction, 0.0, 0.0, 0.0), "bank-figure");
            assert!(rankine(friction, 0.0).is_err());
        }
        assert!(rankine(30.0, 31.0).is_err());
    }
}
