//! Whether a wall held by its weight alone would tip about its toe or slide on its base.

use super::pressure::Angles;
use super::{Bank, Check};
use crate::Error;
use crate::quantity::{Density, Length, Read, metres};
use crate::wall::{Section, Side};

/// Standard gravity in m/s², exact by definition.
const GRAVITY: f64 = 9.80665;

/// A retaining wall cut across, seen with the bank on its right.
///
/// Invariant: height, top and base are more than zero and finite.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Profile {
    height: f64,
    top: f64,
    front: f64,
    back: f64,
}

impl Profile {
    /// The profile with these measurements. The leans are horizontal for each unit of rise,
    /// more than zero where the wall widens towards its base; a back of less than zero leans
    /// over the bank, as where both faces lean back alike.
    ///
    /// # Errors
    /// [`Error::NotPositive`] if the height, the top or the base that follows from these is
    /// zero or less, or no number.
    pub fn new(
        height: Length,
        top_width: Length,
        front_lean: f64,
        back_lean: f64,
    ) -> Result<Self, Error> {
        let profile = Self {
            height: height.si(),
            top: top_width.si(),
            front: front_lean,
            back: back_lean,
        };
        for (key, given) in [
            ("wall.height", profile.height),
            ("wall.top_width", profile.top),
            ("wall.batter", profile.base()),
        ] {
            if given <= 0.0 || !given.is_finite() {
                let given = metres(given);
                return Err(Error::NotPositive { key, given });
            }
        }
        Ok(profile)
    }

    /// The profile of a wall as it is planned, with the bank on one side.
    pub fn of(section: &Section, bank: Side) -> Self {
        let front = match bank {
            Side::Left => Side::Right,
            Side::Right => Side::Left,
        };
        Self {
            height: section.height().si(),
            top: section.top_width().si(),
            front: section.batter(front).lean(),
            back: section.batter(bank).lean(),
        }
    }

    /// From the toe of the front to the heel at the bank.
    pub fn base_width(&self) -> Length {
        metres(self.base())
    }

    /// Ground to the underside of the cope.
    pub fn height(&self) -> Length {
        metres(self.height)
    }

    fn base(&self) -> f64 {
        self.top + self.height * (self.front + self.back)
    }

    /// Area in m² and its moment about the toe in m³: the upright middle, and a triangle for
    /// each face, which counts as taken away where the face leans the other way.
    fn area_and_moment(&self) -> (f64, f64) {
        let [front, back] = [self.front, self.back].map(|lean| lean * self.height);
        let parts = [
            (front * self.height / 2.0, front * 2.0 / 3.0),
            (self.top * self.height, front + self.top / 2.0),
            (back * self.height / 2.0, front + self.top + back / 3.0),
        ];
        parts.iter().fold((0.0, 0.0), |(area, moment), (part, at)| {
            (area + part, moment + part * at)
        })
    }

    /// The check of one metre of this wall; see [`super::check`].
    ///
    /// # Errors
    /// Those of [`super::check`].
    pub fn check(&self, bank: &Bank, built: Density) -> Result<Check, Error> {
        bank.hold(self.height())?;
        let lean = self.back.atan();
        let angles = Angles {
            friction_degrees: bank.friction_degrees,
            wall_friction_degrees: bank.wall_friction_degrees,
            lean_degrees: lean.to_degrees(),
            slope_degrees: bank.slope_degrees,
        };
        let ka = angles.coulomb()?;
        let thrust = Thrust::of(bank, ka, angles.load_spread());
        let tilt = lean + bank.wall_friction_degrees.to_radians();
        let [across, down] = [tilt.cos(), tilt.sin()].map(|share| share * thrust.whole());
        let (area, area_moment) = self.area_and_moment();
        let unit_weight = built.si() * GRAVITY / 1000.0;
        let weight = area * unit_weight;

        // The thrust meets the back, which stands farther from the toe the lower it is hit.
        let arm = self.base() - self.back * thrust.centre();
        // A wall that leans far over a smooth fill is lifted; that tips it rather than holds.
        let holding = area_moment * unit_weight + down.max(0.0) * arm;
        let tipping = across * thrust.centre() + (-down).max(0.0) * arm;
        let pressing = weight + down;
        let foot = (0.0 < pressing).then(|| (holding - tipping) / pressing);
        let grip = bank.base_friction_degrees.to_radians().tan();
        Ok(Check {
            base_width: self.base_width(),
            ka,
            weight_kn_m: weight,
            across_kn_m: across,
            down_kn_m: down,
            thrust_height: metres(thrust.centre()),
            overturning: holding / tipping,
            sliding: pressing.max(0.0) * grip / across,
            resultant_share: foot.map(|foot| foot / self.base()),
            toe_pressure_kpa: foot.and_then(|foot| toe_pressure(pressing, foot, self.base())),
        })
    }
}

/// The thrust on the back of a metre of wall, in kN, as its two parts.
struct Thrust {
    /// Of the fill itself: nothing at its top, most at its foot, so it acts a third up.
    fill: f64,
    /// Of a load on it: alike all the way, so it acts half-way up.
    load: f64,
    /// Height of the fill in metres.
    height: f64,
}

impl Thrust {
    /// `½ Ka γ h²` of the fill and `Ka q h · spread` of a load q on it.
    fn of(bank: &Bank, ka: f64, spread: f64) -> Self {
        let height = bank.retained.si();
        let unit_weight = bank.fill.si() * GRAVITY / 1000.0;
        Self {
            fill: ka * unit_weight * height * height / 2.0,
            load: ka * bank.load_kpa * height * spread,
            height,
        }
    }

    fn whole(&self) -> f64 {
        self.fill + self.load
    }

    /// Above the base, in metres.
    fn centre(&self) -> f64 {
        self.height * (self.fill / 3.0 + self.load / 2.0) / self.whole()
    }
}

/// Pressure under the toe in kPa from the load in kN, its distance from the toe and the base
/// in metres: straight across the base, and where that would have to pull at the heel, over
/// three times the distance. `None` where the load falls in front of the toe.
fn toe_pressure(pressing: f64, foot: f64, base: f64) -> Option<f64> {
    if foot <= 0.0 {
        return None;
    }
    if foot < base / 3.0 {
        return Some(2.0 * pressing / (3.0 * foot));
    }
    Some((pressing / base * (4.0 - 6.0 * foot / base)).max(0.0))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::kg_per_m3;
    use crate::wall::Batter;

    fn kn_per_m3(weight: f64) -> Density {
        kg_per_m3(weight * 1000.0 / GRAVITY)
    }

    fn bank(retained: f64) -> Bank {
        Bank {
            retained: metres(retained),
            fill: kn_per_m3(18.0),
            friction_degrees: 20.0,
            wall_friction_degrees: 0.0,
            slope_degrees: 0.0,
            load_kpa: 0.0,
            base_friction_degrees: 0.7_f64.atan().to_degrees(),
        }
    }

    fn near(what: &str, ours: f64, theirs: f64, off: f64) {
        assert!(
            (ours - theirs).abs() < off,
            "{what}: {ours}, by hand {theirs}"
        );
    }

    /// By hand: 0.4 m at the top, 0.8 m at the base, back plumb, 1.6 m high, 24 kN/m³; fill
    /// 18 kN/m³ and 20 degrees, smooth back; 0.7 under the base.
    /// Ka = tan² 35° = 0.490291; thrust 9 · 1.6² · Ka = 11.2963; weight 0.96 · 24 = 23.04;
    /// holding 15.36 · 0.6 + 7.68 · 0.8/3 = 11.264; tipping 11.2963 · 1.6/3 = 6.02470.
    #[test]
    fn a_wall_worked_by_hand() {
        let profile = Profile::new(metres(1.6), metres(0.4), 0.25, 0.0).expect("sound");
        let check = profile.check(&bank(1.6), kn_per_m3(24.0)).expect("sound");
        near("Ka", check.ka, 0.490_291, 1e-6);
        near("weight", check.weight_kn_m, 23.04, 1e-9);
        near("thrust", check.across_kn_m, 11.2963, 1e-4);
        near("down", check.down_kn_m, 0.0, 1e-12);
        near("overturning", check.overturning, 11.264 / 6.0247, 1e-4);
        near("sliding", check.sliding, 0.7 * 23.04 / 11.2963, 1e-4);
        let foot = (11.264 - 6.0247) / 23.04;
        let share = check.resultant_share.expect("it presses");
        near("share", share, foot / 0.8, 1e-4);
        assert!(!check.in_middle_third());
        let toe = check.toe_pressure_kpa.expect("on its base");
        near("toe", toe, 2.0 * 23.04 / (3.0 * foot), 1e-2);
    }

    /// By hand, the same wall under 5 kPa: 5 · 1.6 · Ka = 3.92233 more, half-way up.
    #[test]
    fn a_load_on_the_bank_tips_half_way_up() {
        let mut loaded = bank(1.6);
        loaded.load_kpa = 5.0;
        let profile = Profile::new(metres(1.6), metres(0.4), 0.25, 0.0).expect("sound");
        let check = profile.check(&loaded, kn_per_m3(24.0)).expect("sound");
        near("thrust", check.across_kn_m, 11.2963 + 3.922_33, 1e-4);
        let tipping = 6.0247 + 3.922_33 * 0.8;
        near("overturning", check.overturning, 11.264 / tipping, 1e-4);
    }

    /// The other road: the section in a thousand slices, the pressure on each slice of the
    /// back, every force with its own arm about the toe.
    #[test]
    fn slices_agree() {
        for back in [-0.2, 0.0, 0.1, 0.2] {
            for (wall_friction, slope, load) in [(0.0, 0.0, 0.0), (20.0, 10.0, 4.0)] {
                let (height, top, front) = (2.0, 0.6, 0.15);
                let mut bank = bank(1.8);
                bank.friction_degrees = 32.0;
                bank.wall_friction_degrees = wall_friction;
                bank.slope_degrees = slope;
                bank.load_kpa = load;
                let profile =
                    Profile::new(metres(height), metres(top), front, back).expect("sound");
                let check = profile.check(&bank, kn_per_m3(17.0)).expect("sound");

                let slices = 4000;
                let step = height / f64::from(slices);
                let base = top + height * (front + back);
                let lean = f64::atan(back);
                let tilt = lean + wall_friction.to_radians();
                let spread =
                    lean.cos() * f64::cos(slope.to_radians()) / (lean - slope.to_radians()).cos();
                let (mut down, mut across, mut turning) = (0.0, 0.0, 0.0);
                for slice in 0..slices {
                    let up = (f64::from(slice) + 0.5) * step;
                    let [from, to] = [front * up, base - back * up];
                    let weight = 17.0 * (to - from) * step;
                    down += weight;
                    turning += weight * (from + to) / 2.0;
                    let push = check.ka * (18.0 * (1.8 - up) + load * spread) * step;
                    if up < 1.8 {
                        across += push * tilt.cos();
                        down += push * tilt.sin();
                        turning += push * (tilt.sin() * to - tilt.cos() * up);
                    }
                }
                near("across", check.across_kn_m, across, 1e-3);
                let pressing = check.weight_kn_m + check.down_kn_m;
                near("pressing", pressing, down, 1e-3);
                let share = check.resultant_share.expect("it presses");
                near("share", share, turning / down / base, 1e-4);
            }
        }
    }

    /// The sign of the upright part: a rough back and fill resting on it press the wall down,
    /// a smooth back that leans over the fill is lifted.
    #[test]
    fn fill_presses_down_or_lifts() {
        let down = |back: f64, wall_friction: f64| {
            let mut bank = bank(1.5);
            bank.wall_friction_degrees = wall_friction;
            let profile = Profile::new(metres(1.5), metres(0.8), 0.2, back).expect("sound");
            let check = profile.check(&bank, kn_per_m3(18.0)).expect("sound");
            (check.down_kn_m, check.overturning)
        };
        assert!(0.0 < down(0.0, 15.0).0);
        assert!(0.0 < down(0.2, 0.0).0);
        assert!(down(-0.2, 0.0).0 < 0.0);
        assert!(down(0.0, 0.0).1 < down(0.0, 15.0).1);
    }

    /// Twice as large in every direction, every safety is the same.
    #[test]
    fn size_alone_changes_no_safety() {
        let check = |size: f64| {
            let profile =
                Profile::new(metres(1.2 * size), metres(0.4 * size), 0.2, 0.1).expect("sound");
            profile.check(&bank(size), kn_per_m3(18.0)).expect("sound")
        };
        let [small, large] = [1.0, 2.0].map(check);
        near("overturning", large.overturning, small.overturning, 1e-9);
        near("sliding", large.sliding, small.sliding, 1e-9);
        near("weight", large.weight_kn_m, 4.0 * small.weight_kn_m, 1e-9);
    }

    #[test]
    fn the_bank_may_be_on_either_side() {
        let six = Batter::one_in(6.0).expect("sound");
        let section = |left, right| Section::new(metres(1.2), metres(0.5), left, right);
        let one = section(six, Batter::PLUMB).expect("sound");
        let other = section(Batter::PLUMB, six).expect("sound");
        assert_eq!(
            Profile::of(&one, Side::Right),
            Profile::of(&other, Side::Left)
        );
        assert_ne!(
            Profile::of(&one, Side::Right),
            Profile::of(&other, Side::Right)
        );
    }

    #[test]
    fn the_pressure_at_the_toe_meets_at_the_third() {
        let [below, above] =
            [0.333_333, 0.333_334].map(|foot| toe_pressure(10.0, foot, 1.0).unwrap_or(0.0));
        near("at the third", below, above, 1e-3);
        near(
            "in the middle",
            toe_pressure(10.0, 0.5, 1.0).unwrap_or(0.0),
            10.0,
            1e-9,
        );
        assert_eq!(toe_pressure(10.0, 0.0, 1.0), None);
    }

    #[test]
    fn a_wall_that_comes_to_a_point_is_refused() {
        for (height, top, back) in [
            (0.0, 0.4, 0.0),
            (1.0, f64::NAN, 0.0),
            (2.0, 0.4, -0.2),
            (2.0, 0.4, f64::INFINITY),
        ] {
            assert!(Profile::new(metres(height), metres(top), 0.0, back).is_err());
        }
    }
}
