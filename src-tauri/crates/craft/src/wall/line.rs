//! The line a wall is set out along: straights and arcs in order from station 0.

use super::Side;
use crate::quantity::{Length, Read, metres};
use std::f64::consts::{PI, TAU};

/// A line whose end comes so near its beginning closes on itself: stretches are taped and
/// written to the centimetre (common practice, no source).
const CLOSING_M: f64 = 0.05;
/// And so nearly in the same direction.
const CLOSING_RAD: f64 = 5.0 * PI / 180.0;

/// One stretch of a line.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Stretch {
    /// Along the centre line.
    pub length: Length,
    /// How it bends; `None` for a straight.
    pub bend: Option<Bend>,
}

/// An arc's radius and the way it turns.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bend {
    /// Of the centre line.
    pub radius: Length,
    /// The side of the wall its centre lies on.
    pub turn: Side,
}

impl Bend {
    /// One over the radius in 1/m: more than nothing where the line turns left.
    pub(super) fn curvature(self) -> f64 {
        match self.turn {
            Side::Left => 1.0 / self.radius.si(),
            Side::Right => -1.0 / self.radius.si(),
        }
    }

    /// The radius of a face that stands so far from the centre line on one side.
    pub fn radius_at(self, side: Side, offset: Length) -> Length {
        if side == self.turn {
            self.radius - offset
        } else {
            self.radius + offset
        }
    }
}

/// A place on the ground plan: station 0 is the origin, the line sets off along x, and y
/// lies to its left.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Place {
    /// Along the first direction, in metres.
    pub x_m: f64,
    /// To the left of it, in metres.
    pub y_m: f64,
    /// The line's own direction there, anticlockwise from x, in radians.
    pub heading: f64,
}

impl Place {
    /// The place so far beside the line on one side.
    pub fn beside(self, side: Side, offset: Length) -> Self {
        let left = match side {
            Side::Left => offset.si(),
            Side::Right => -offset.si(),
        };
        Self {
            x_m: self.x_m - left * self.heading.sin(),
            y_m: self.y_m + left * self.heading.cos(),
            heading: self.heading,
        }
    }

    /// The place after following a curvature (1/m) for so many metres.
    fn onward(self, along: f64, curvature: f64) -> Self {
        let turned = along * curvature;
        // The chord of the arc; for a straight sin(t)/t tends to 1.
        let chord = if turned.abs() < 1e-9 {
            along
        } else {
            along * (turned / 2.0).sin() / (turned / 2.0)
        };
        let towards = self.heading + turned / 2.0;
        Self {
            x_m: self.x_m + chord * towards.cos(),
            y_m: self.y_m + chord * towards.sin(),
            heading: self.heading + turned,
        }
    }
}

/// Straights and arcs in order, each setting off in the direction in which the last one ends.
#[derive(Debug, Clone, PartialEq)]
pub struct Line {
    stretches: Vec<Stretch>,
}

impl Line {
    /// One straight.
    pub fn straight(length: Length) -> Self {
        Self {
            stretches: vec![Stretch { length, bend: None }],
        }
    }

    /// The given stretches made `length` long: the last straight is stretched or shortened;
    /// where that is not enough, or there is none, the far end is cut off or carried on
    /// straight. Without stretches, one straight.
    pub fn of_length(given: &[Stretch], length: Length) -> Self {
        let mut stretches = given.to_vec();
        let last = stretches.iter().rposition(|one| one.bend.is_none());
        match last {
            None => {
                let beyond = length - total(&stretches);
                // What a hair of rounding leaves is no stretch of its own.
                if 1e-6 < beyond.si() {
                    stretches.push(Stretch {
                        length: beyond,
                        bend: None,
                    });
                }
            }
            Some(last) => {
                let rest = length - total(&stretches) + stretches[last].length;
                stretches[last].length = if rest < metres(0.0) {
                    metres(0.0)
                } else {
                    rest
                };
            }
        }
        let mut line = Self { stretches };
        line.cut_off_beyond(length);
        line
    }

    fn cut_off_beyond(&mut self, length: Length) {
        let mut left = length;
        for stretch in &mut self.stretches {
            if left < stretch.length {
                stretch.length = left;
            }
            left -= stretch.length;
        }
        self.stretches.retain(|one| metres(0.0) < one.length);
    }

    /// The stretches in order.
    pub fn stretches(&self) -> &[Stretch] {
        &self.stretches
    }

    /// The sum of its stretches.
    pub fn length(&self) -> Length {
        total(&self.stretches)
    }

    /// Each stretch with the stations at which it begins and ends.
    pub fn spans(&self) -> impl Iterator<Item = (Length, Length, Option<Bend>)> {
        let mut from = metres(0.0);
        self.stretches.iter().map(move |stretch| {
            let to = from + stretch.length;
            let span = (from, to, stretch.bend);
            from = to;
            span
        })
    }

    /// Where stretches meet, between the ends.
    pub fn joints(&self) -> Vec<Length> {
        let inner = self.stretches.len().saturating_sub(1);
        self.spans().take(inner).map(|(_, to, _)| to).collect()
    }

    /// Where a station lies on the ground plan.
    pub fn place(&self, station: Length) -> Place {
        let mut place = Place {
            x_m: 0.0,
            y_m: 0.0,
            heading: 0.0,
        };
        let mut left = station.si();
        for stretch in &self.stretches {
            let along = left.min(stretch.length.si());
            place = place.onward(along, stretch.bend.map_or(0.0, Bend::curvature));
            left -= along;
            if left <= 0.0 {
                break;
            }
        }
        place
    }

    /// Whether it comes round to where it began, by one whole turn, to within 5 cm and 5°.
    pub fn closes(&self) -> bool {
        let end = self.place(self.length());
        let gap = end.x_m.hypot(end.y_m);
        gap <= CLOSING_M && (end.heading.abs() - TAU).abs() <= CLOSING_RAD
    }
}

/// The sum of all stretches.
pub fn total(stretches: &[Stretch]) -> Length {
    stretches
        .iter()
        .fold(metres(0.0), |sum, one| sum + one.length)
}

/// What all stretches but the last straight take, where a line has a straight.
pub fn all_but_the_last_straight(stretches: &[Stretch]) -> Option<Length> {
    let last = stretches.iter().rfind(|one| one.bend.is_none())?;
    Some(total(stretches) - last.length)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn arc(length: f64, radius: f64, turn: Side) -> Stretch {
        Stretch {
            length: metres(length),
            bend: Some(Bend {
                radius: metres(radius),
                turn,
            }),
        }
    }

    fn straight(length: f64) -> Stretch {
        Stretch {
            length: metres(length),
            bend: None,
        }
    }

    fn of(stretches: &[Stretch]) -> Line {
        Line::of_length(stretches, total(stretches))
    }

    /// By hand: after a quarter turn to the left of radius 2 the line is at (2, 2) and heads
    /// along y; a straight of 3 from there ends at (2, 5).
    #[test]
    fn a_quarter_turn_and_a_straight() {
        let line = of(&[arc(PI, 2.0, Side::Left), straight(3.0)]);
        let end = line.place(line.length());
        assert!((end.x_m - 2.0).abs() < 1e-12 && (end.y_m - 5.0).abs() < 1e-12);
        assert!((end.heading - PI / 2.0).abs() < 1e-12);
        let right = of(&[arc(PI, 2.0, Side::Right), straight(3.0)]);
        let mirrored = right.place(right.length());
        assert!((mirrored.x_m - end.x_m).abs() < 1e-12);
        assert!((mirrored.y_m + end.y_m).abs() < 1e-12);
        assert!(!line.closes());
    }

    #[test]
    fn a_ring_closes_though_taped_to_the_centimetre() {
        assert!(of(&[arc(18.85, 3.0, Side::Right)]).closes());
        // Half of 2 · 2.05 · π is 6.4403.
        let rounded = [
            straight(4.0),
            arc(6.44, 2.05, Side::Left),
            straight(4.0),
            arc(6.44, 2.05, Side::Left),
        ];
        assert!(of(&rounded).closes());
        assert!(!of(&[arc(18.0, 3.0, Side::Left)]).closes());
        assert!(!of(&[straight(9.0)]).closes());
    }

    #[test]
    fn the_last_straight_takes_what_is_left() {
        let given = [straight(4.0), arc(3.0, 6.0, Side::Left), straight(2.0)];
        let longer = Line::of_length(&given, metres(12.0));
        assert_eq!(longer.stretches()[2].length, metres(5.0));
        let shorter = Line::of_length(&given, metres(7.5));
        assert!((shorter.stretches()[2].length.si() - 0.5).abs() < 1e-12);
        let cut = Line::of_length(&given, metres(6.0));
        assert_eq!(cut.stretches().len(), 2);
        assert!((cut.length().si() - 6.0).abs() < 1e-12);
        assert_eq!(all_but_the_last_straight(&given), Some(metres(7.0)));
        assert_eq!(all_but_the_last_straight(&given[1..2]), None);
        let carried_on = Line::of_length(&given[1..2], metres(5.0));
        assert_eq!(carried_on.stretches()[1], straight(2.0));
        assert_eq!(of(&given[1..2]).stretches(), &given[1..2]);
    }
}
