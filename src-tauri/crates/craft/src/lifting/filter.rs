//! The UK filter for lifting and lowering: a weight for each zone the hands pass through.

use super::{Lift, PerMinute};
use crate::quantity::{Length, Mass, Read, kilograms};

/// Whose figures: the filter has a set for men and one for women.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum People {
    /// Men.
    Men,
    /// Women.
    Women,
}

/// A zone of the filter by height, from the top down.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Zone {
    /// Shoulder height and above.
    AboveShoulder,
    /// Elbow to shoulder.
    ElbowToShoulder,
    /// Knuckles of the hanging arm to elbow: where lifting is easiest.
    KnuckleToElbow,
    /// Middle of the lower leg to knuckles.
    LegToKnuckle,
    /// Below the middle of the lower leg.
    BelowLeg,
}

/// A zone of the filter by reach.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Reach {
    /// Close to the body, upper arms hanging.
    Close,
    /// Arms extended.
    Extended,
}

/// The measurements of a body that the filter's drawing goes by. It is a drawing and gives
/// none, so they come from a table of body sizes.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Body {
    /// Floor to shoulder.
    pub shoulder: Length,
    /// Floor to elbow.
    pub elbow: Length,
    /// Floor to the knuckles of the hanging arm.
    pub knuckle: Length,
    /// Floor to the middle of the lower leg.
    pub mid_lower_leg: Length,
    /// Elbow to what the hand grips.
    pub elbow_to_grip: Length,
    /// Shoulder to what the hand grips.
    pub shoulder_to_grip: Length,
}

/// How far a load may be carried without a rest for the filter to hold, in metres.
///
/// Source: INDG143 and L23, as restated in a safety handbook.
const LONGEST_CARRY_M: f64 = 10.0;

impl Zone {
    /// All zones from the top down.
    pub const ALL: [Self; 5] = [
        Self::AboveShoulder,
        Self::ElbowToShoulder,
        Self::KnuckleToElbow,
        Self::LegToKnuckle,
        Self::BelowLeg,
    ];

    /// The filter weight of a zone: two figures each, close and extended.
    ///
    /// Source: HSE INDG143, Figure 1, and L23; the figures read in an employer's chart that
    /// gives the same ten for each, the names of the zones from memory.
    pub fn weight(self, people: People, reach: Reach) -> Mass {
        let (men, women) = match self {
            Self::AboveShoulder => ([10.0, 5.0], [7.0, 3.0]),
            Self::ElbowToShoulder => ([20.0, 10.0], [13.0, 7.0]),
            Self::KnuckleToElbow => ([25.0, 15.0], [16.0, 10.0]),
            Self::LegToKnuckle => ([20.0, 10.0], [13.0, 7.0]),
            Self::BelowLeg => ([10.0, 5.0], [7.0, 3.0]),
        };
        let [close, extended] = match people {
            People::Men => men,
            People::Women => women,
        };
        kilograms(match reach {
            Reach::Close => close,
            Reach::Extended => extended,
        })
    }

    /// The lowest and highest height of the zone for a body; the drawing ends nowhere above.
    fn heights(self, body: &Body) -> [f64; 2] {
        let [shoulder, elbow, knuckle, leg] =
            [body.shoulder, body.elbow, body.knuckle, body.mid_lower_leg].map(Read::si);
        match self {
            Self::AboveShoulder => [shoulder, f64::INFINITY],
            Self::ElbowToShoulder => [elbow, shoulder],
            Self::KnuckleToElbow => [knuckle, elbow],
            Self::LegToKnuckle => [leg, knuckle],
            Self::BelowLeg => [0.0, leg],
        }
    }
}

/// What lifting so often takes off the filter weight, as a share.
///
/// Up to 30 times an hour nothing; 30 % at once or twice a minute, 50 % at five to eight
/// times, 80 % above twelve. In the gaps, which the filter leaves open, the next greater
/// reduction holds, the more careful one: 30 % from the thirty-first time in an hour, 50 %
/// above twice, 80 % above eight times a minute. What is no number takes off the most.
///
/// Source: HSE INDG143, *Frequent lifting and lowering*, as restated in two safety handbooks.
fn for_rate(rate: PerMinute) -> f64 {
    let PerMinute(rate) = rate;
    if rate <= 0.5 {
        0.0
    } else if rate <= 2.0 {
        0.3
    } else if rate <= 8.0 {
        0.5
    } else {
        0.8
    }
}

/// What twisting so far to the side takes off the filter weight, as a share: 10 % beyond
/// 45 degrees, 20 % beyond 90. What is no number takes off the most.
///
/// Source: HSE INDG143, *Twisting*, as restated in two safety handbooks.
fn for_twist(degrees: f64) -> f64 {
    let degrees = degrees.abs();
    if degrees <= 45.0 {
        0.0
    } else if degrees <= 90.0 {
        0.1
    } else {
        0.2
    }
}

impl People {
    /// What the filter lets one of these people lift so and carry so far: the least weight of
    /// all zones the hands pass through, less what frequency and twist take off.
    ///
    /// The two reductions are added, which takes off more than one after the other; the
    /// filter does not say. Nothing is left where the load is carried more than 10 m without
    /// a rest, where the hands go below the feet or beyond arm's length, or where a
    /// measurement is no number: the filter says nothing of such a lift. It takes a load for
    /// granted that both hands grip readily, steady footing and fair weather; it knows no
    /// grip, and the lift's own is left out of account.
    ///
    /// Source: HSE INDG143 and L23: "If the lifter's hands enter more than one box during the
    /// operation, use the smallest weight", as quoted in an employer's procedure.
    pub fn limit(self, body: &Body, lift: &Lift, carried: Length) -> Mass {
        let nothing = kilograms(0.0);
        let (from, to) = (lift.from, lift.to);
        let path = [from.height.si(), to.height.si()];
        // Written so that what is no number fails.
        let known = path
            .iter()
            .all(|height| (0.0..f64::INFINITY).contains(height))
            && carried.si() <= LONGEST_CARRY_M;
        let reach = if from.reach < to.reach {
            to.reach
        } else {
            from.reach
        };
        let twist = [from, to].map(|it| for_twist(it.twist_degrees));
        let left = 1.0 - for_rate(lift.rate) - twist[0].max(twist[1]);
        if !known || left <= 0.0 || from.reach.si().is_nan() || to.reach.si().is_nan() {
            return nothing;
        }
        let Some(extended) = body.extended(reach) else {
            return nothing;
        };
        let [low, high] = [path[0].min(path[1]), path[0].max(path[1])];
        let weights = Zone::ALL
            .into_iter()
            .filter(|zone| {
                let [bottom, top] = zone.heights(body);
                bottom <= high && low <= top
            })
            .map(|zone| {
                let [close, far] =
                    [Reach::Close, Reach::Extended].map(|reach| zone.weight(self, reach));
                close + (far - close) * extended
            });
        let least = weights.reduce(|least, one| if one < least { one } else { least });
        least.map_or(nothing, |least| least * left)
    }
}

impl Body {
    /// How far the arms are extended at this reach, from 0 (close) to 1 (extended).
    ///
    /// The drawing's inner boxes end where the hands are with upper arms hanging and forearms
    /// level, one elbow-to-grip from the body's middle line. Beyond them the outer, smaller
    /// figure holds; but "use an in-between weight if the hands are close to a boundary", and
    /// close is taken to be the nearer half of the way to arm's length, over which the
    /// figure falls evenly. Nothing beyond arm's length. The halves are our reading.
    ///
    /// Source: HSE INDG143, as quoted in an employer's procedure.
    fn extended(&self, reach: Length) -> Option<f64> {
        let reach = reach.si();
        let [close, arms_length] = [self.elbow_to_grip, self.shoulder_to_grip].map(Read::si);
        if reach <= close {
            return Some(0.0);
        }
        if !(close..=arms_length).contains(&reach) {
            return None;
        }
        let share = (reach - close) / ((arms_length - close) / 2.0);
        Some(share.min(1.0))
    }
}

#[cfg(test)]
mod tests {
    use super::super::sample;
    use super::*;
    use crate::quantity::metres;

    fn limit(people: People, change: impl FnOnce(&mut Lift)) -> f64 {
        let body = match people {
            People::Men => sample::men(),
            People::Women => sample::women(),
        };
        let mut lift = sample::easy_lift();
        change(&mut lift);
        people.limit(&body, &lift, metres(2.0)).si()
    }

    fn both_heights(lift: &mut Lift, from: f64, to: f64) {
        lift.from.height = metres(from);
        lift.to.height = metres(to);
    }

    /// By hand from the ten figures: the least of all zones passed.
    #[test]
    fn the_least_zone_on_the_way_counts() {
        for (people, from, to, due) in [
            (People::Men, 0.9, 1.0, 25.0),
            (People::Women, 0.9, 1.0, 16.0),
            (People::Men, 0.0, 1.0, 10.0),
            (People::Men, 1.0, 0.0, 10.0),
            (People::Women, 0.5, 1.2, 13.0),
            (People::Women, 0.9, 1.35, 7.0),
            (People::Men, 0.9, 1.35, 20.0),
            // On the line between two zones the lesser counts.
            (People::Men, 0.9, 1.425, 10.0),
        ] {
            let ours = limit(people, |lift| both_heights(lift, from, to));
            assert!((ours - due).abs() < 1e-9, "{people:?} {from} {to}: {ours}");
        }
    }

    /// By hand: elbow to grip 0.36 m, shoulder to grip 0.665 m, so "close to the boundary"
    /// ends at 0.5125 m; half way there is 0.436 25 m.
    #[test]
    fn reach_goes_from_close_to_extended_and_ends_at_arms_length() {
        for (reach, due) in [
            (0.1, 25.0),
            (0.36, 25.0),
            (0.436_25, 20.0),
            (0.5125, 15.0),
            (0.66, 15.0),
            (0.67, 0.0),
            (f64::NAN, 0.0),
        ] {
            let ours = limit(People::Men, |lift| lift.to.reach = metres(reach));
            assert!((ours - due).abs() < 1e-9, "{reach}: {ours}");
        }
    }

    /// The published reductions, and the next greater one in the gaps between them.
    #[test]
    fn often_and_twisted_takes_off() {
        for (rate, twist, due) in [
            (0.5, 45.0, 25.0),
            (0.51, 0.0, 17.5),
            (1.0, 0.0, 17.5),
            (2.0, 0.0, 17.5),
            (2.1, 0.0, 12.5),
            (5.0, 0.0, 12.5),
            (8.0, 0.0, 12.5),
            (8.1, 0.0, 5.0),
            (13.0, 0.0, 5.0),
            (0.5, 46.0, 22.5),
            (0.5, -46.0, 22.5),
            (0.5, 91.0, 20.0),
            (1.0, 60.0, 15.0),
            (13.0, 100.0, 0.0),
            (f64::NAN, 0.0, 5.0),
        ] {
            let ours = limit(People::Men, |lift| {
                lift.rate = PerMinute(rate);
                lift.from.twist_degrees = twist;
            });
            assert!((ours - due).abs() < 1e-9, "{rate} {twist}: {ours}");
        }
    }

    #[test]
    fn where_the_filter_says_nothing_nothing_is_lifted() {
        let far = People::Men.limit(&sample::men(), &sample::easy_lift(), metres(10.1));
        assert!(far.si().abs() < 1e-12);
        let ten = People::Men.limit(&sample::men(), &sample::easy_lift(), metres(10.0));
        assert!((ten.si() - 25.0).abs() < 1e-9);
        for height in [-0.1, f64::NAN, f64::INFINITY] {
            let ours = limit(People::Men, |lift| lift.to.height = metres(height));
            assert!(ours.abs() < 1e-12, "{height}");
        }
    }
}
