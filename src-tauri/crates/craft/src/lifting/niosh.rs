//! The revised NIOSH lifting equation: a load constant times six multipliers.

use super::{Band, PerMinute, System, WorkTime};
use crate::quantity::{Length, Mass, Read, kilograms};

/// Where the hands are at one end of a lift.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Hands {
    /// H: level, from midway between the ankles to midway between the hands. Less than the
    /// least of the equation counts as the least.
    pub reach: Length,
    /// V: from the floor the feet stand on to the hands.
    pub height: Length,
    /// A: how far the load stands to the side of straight ahead, in degrees, either way.
    pub twist_degrees: f64,
}

/// How well the hands hold the load (coupling).
///
/// A stone is a loose, bulky, rough object held with gloves, which is [`Grip::Poor`] but for
/// the few that are light, regular and easy to get the fingers under.
/// Source: NIOSH 94-110, Table 6 and its notes, p. 17.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default)]
pub enum Grip {
    /// Handles, or a loose object the hands wrap round in comfort.
    Good,
    /// Fingers clamped under it at nearly a right angle.
    Fair,
    /// Bulky, rough, slippery, lopsided, or held with gloves.
    #[default]
    Poor,
}

impl Grip {
    /// The word of the table.
    pub fn word(self) -> &'static str {
        match self {
            Self::Good => "good",
            Self::Fair => "fair",
            Self::Poor => "poor",
        }
    }
}

/// One lift, from where the load is taken up to where it is set down.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Lift {
    /// Where it is taken up.
    pub from: Hands,
    /// Where it is set down.
    pub to: Hands,
    /// Whether it must be set down with care: held, guided or gripped anew (significant
    /// control). A stone set in a wall always is.
    pub control: bool,
    /// How often.
    pub rate: PerMinute,
    /// How long the lifting goes on.
    pub work: WorkTime,
    /// How well it is held.
    pub grip: Grip,
}

/// What makes the lift harder, each a share from 0 to 1 without a unit.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Multipliers {
    /// HM: how far away.
    pub reach: f64,
    /// VM: how far above or below the best height.
    pub height: f64,
    /// DM: how far up or down it is moved.
    pub travel: f64,
    /// AM: how far to the side.
    pub twist: f64,
    /// FM: how often and for how long.
    pub frequency: f64,
    /// CM: how well held.
    pub grip: f64,
}

impl Multipliers {
    /// RWL, the recommended weight limit: `LC · HM · VM · DM · AM · FM · CM`, LC being 23 kg
    /// or 51 lb. A load that nearly all healthy workers could lift so for the working time
    /// without more risk to the lower back.
    ///
    /// Source: NIOSH 94-110, sections 1.1.1 and 1.3, pp. 1 and 7. Its worked examples multiply
    /// multipliers rounded to two decimals and so differ a little from full precision.
    pub fn limit(&self, system: System) -> Mass {
        let Self {
            reach,
            height,
            travel,
            twist,
            frequency,
            grip,
        } = *self;
        let it = system.constants();
        it.mass(it.load * reach * height * travel * twist * frequency * grip)
    }
}

/// HM = 25 cm / H, or 10 in / H; 1 up to the least H, 0 beyond the most. Pp. 7 and 8.
fn reach(length: Length, system: System) -> f64 {
    let it = system.constants();
    let h = it.number(length);
    if h <= it.reach_least {
        1.0
    } else if h <= it.reach_most {
        it.reach_least / h
    } else {
        0.0
    }
}

/// VM = 1 - 0.003 |V - 75| in cm, or 1 - 0.0075 |V - 30| in inches; 0 above the most V. Below
/// the feet there is no V in the equation, so that is 0 too. Pp. 7 and 9.
fn height(length: Length, system: System) -> f64 {
    let it = system.constants();
    let v = it.number(length);
    if (0.0..=it.height_most).contains(&v) {
        1.0 - it.height_slope * (v - it.height_best).abs()
    } else {
        0.0
    }
}

/// DM = 0.82 + 4.5 cm / D, or 0.82 + 1.8 in / D; 1 up to the least D, 0 beyond the most.
/// Pp. 7, 10 and 11.
fn travel(length: Length, system: System) -> f64 {
    let it = system.constants();
    let d = it.number(length);
    if d <= it.travel_least {
        1.0
    } else if d <= it.travel_most {
        0.82 + it.travel_numerator / d
    } else {
        0.0
    }
}

/// AM = 1 - 0.0032 A, to either side; 0 beyond 135 degrees. Pp. 7 and 12.
fn twist(degrees: f64) -> f64 {
    let degrees = degrees.abs();
    if degrees <= 135.0 {
        1.0 - 0.0032 * degrees
    } else {
        0.0
    }
}

/// CM by grip and by where the hands are. "Fair" costs something below the best height
/// alone. Table 7, p. 18.
fn grip(grip: Grip, band: Band) -> f64 {
    match (grip, band) {
        (Grip::Good, _) | (Grip::Fair, Band::AtOrAbove) => 1.00,
        (Grip::Fair, Band::Below) => 0.95,
        (Grip::Poor, _) => 0.90,
    }
}

impl Lift {
    /// D: how far up or down the load is moved.
    pub fn travel(&self) -> Length {
        (self.to.height - self.from.height).abs()
    }

    /// The multipliers at one end of the lift. FM goes by the height of the hands at the
    /// origin at both ends, CM by their height at the end looked at.
    ///
    /// Source: NIOSH 94-110, pp. 15 and 17, and the worksheet of Example 4, p. 46.
    pub fn multipliers(&self, at: Hands, system: System) -> Multipliers {
        Multipliers {
            reach: reach(at.reach, system),
            height: height(at.height, system),
            travel: travel(self.travel(), system),
            twist: twist(at.twist_degrees),
            frequency: self
                .rate
                .multiplier(self.work, Band::of(self.from.height, system)),
            grip: grip(self.grip, Band::of(at.height, system)),
        }
    }

    /// RWL: that of the origin; where the load must be set down with care, the lower of
    /// origin and destination. Nothing where the lift lies outside the equation.
    ///
    /// Source: NIOSH 94-110, section 2.1.1, p. 21.
    pub fn limit(&self, system: System) -> Mass {
        self.least(system, |multipliers| multipliers)
    }

    /// FIRWL, the limit if it were lifted but seldom: RWL with FM = 1.
    ///
    /// Source: NIOSH 94-110, section 2.4.1, p. 26.
    pub fn seldom_limit(&self, system: System) -> Mass {
        self.least(system, |multipliers| Multipliers {
            frequency: 1.0,
            ..multipliers
        })
    }

    fn least(&self, system: System, change: impl Fn(Multipliers) -> Multipliers) -> Mass {
        let at = |hands| change(self.multipliers(hands, system)).limit(system);
        let origin = at(self.from);
        if !self.control {
            return origin;
        }
        let destination = at(self.to);
        if destination < origin {
            destination
        } else {
            origin
        }
    }
}

/// LI, the lifting index: `load / limit`, no unit. Up to 1 is what a job is to be laid out
/// for; above 1 some people, and above 3 in the view of some experts nearly all, are at
/// more risk of a bad back. `None` where the limit is nothing: such a lift has no index.
///
/// Source: NIOSH 94-110, sections 1.1.2 and 1.4, pp. 1 and 19.
pub fn index(load: Mass, limit: Mass) -> Option<f64> {
    let fits = kilograms(0.0) < limit && kilograms(0.0) <= load;
    fits.then(|| load.si() / limit.si())
        .filter(|index| index.is_finite())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{INCH_M, POUND_KG, metres};

    fn inches(reach: f64, height: f64) -> Hands {
        Hands {
            reach: metres(reach * INCH_M),
            height: metres(height * INCH_M),
            twist_degrees: 0.0,
        }
    }

    /// In full precision, where the printed examples, which multiply multipliers of two
    /// decimals, have 16.3 and 14.5 lb (Example 1) and 34.9 and 15.2 lb (Example 4): NIOSH
    /// 94-110, pp. 33 to 37 and 44 to 46. Measurements of Example 1 from memory.
    #[test]
    fn both_ends_of_the_worked_examples() {
        let punch_press = Lift {
            from: inches(23.0, 15.0),
            to: inches(23.0, 64.0),
            control: true,
            rate: PerMinute(0.2),
            work: WorkTime::Short,
            grip: Grip::Fair,
        };
        let inspection = Lift {
            from: inches(10.0, 22.0),
            to: inches(20.0, 59.0),
            rate: PerMinute(3.0),
            ..punch_press
        };
        for (lift, origin, lower) in [(punch_press, 16.017, 14.153), (inspection, 34.814, 15.253)] {
            let simple = Lift {
                control: false,
                ..lift
            };
            for (lift, due) in [(simple, origin), (lift, lower)] {
                let ours = lift.limit(System::Us).si() / POUND_KG;
                assert!((ours - due).abs() < 0.000_6, "{ours} {due}");
            }
        }
    }

    /// FM goes by the height at the origin even for the destination (p. 15): at 13 to the
    /// minute lifting is allowed from 30 in and above alone, wherever it ends.
    #[test]
    fn frequency_goes_by_the_origin_and_grip_by_the_end() {
        let (low, high) = (inches(12.0, 20.0), inches(12.0, 40.0));
        let lift = |from, to| Lift {
            from,
            to,
            control: true,
            rate: PerMinute(13.0),
            work: WorkTime::Short,
            grip: Grip::Fair,
        };
        let down = lift(high, low).multipliers(low, System::Us);
        let up = lift(low, high).multipliers(high, System::Us);
        for (ours, due) in [
            (down.frequency, 0.34),
            (down.grip, 0.95),
            (up.frequency, 0.0),
            (up.grip, 1.0),
        ] {
            assert!((ours - due).abs() < 1e-9, "{ours} {due}");
        }
    }

    #[test]
    fn no_limit_has_no_index() {
        let pounds = |value: f64| kilograms(value * POUND_KG);
        assert_eq!(index(pounds(5.0), pounds(0.0)), None);
        assert_eq!(index(pounds(-5.0), pounds(5.0)), None);
        assert_eq!(index(pounds(f64::NAN), pounds(5.0)), None);
        let index = index(pounds(44.0), pounds(14.5));
        assert!(index.is_some_and(|it| (it - 3.03).abs() < 0.005));
    }
}
