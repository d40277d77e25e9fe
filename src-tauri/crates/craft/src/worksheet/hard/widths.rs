//! Widths of walls whose faces differ, and gauges that come to no point.

use super::super::draw::Draw;
use super::super::scale::Scale;
use super::super::{Kind, Question};
use crate::frames::Gauge;
use crate::quantity::{Length, Read, metres, millimetres};
use crate::tables::Tables;
use crate::wall::{Batter, Section};

/// The n of left faces asked about, and of right ones.
const LEFT: [u32; 4] = [5, 6, 7, 8];
const RIGHT: [u32; 4] = [9, 10, 11, 12];
/// The n of gauges asked about.
const GAUGES: [u32; 4] = [7, 9, 11, 13];

/// A wall whose two faces have batters of their own.
#[derive(Debug, Clone, Copy)]
struct Uneven {
    height: Length,
    top: Length,
    one_in: [u32; 2],
}

impl Uneven {
    /// Neighbours differ in the left batter.
    fn draw(draw: &mut Draw, scale: Scale) -> Option<Self> {
        let left = draw.pick_unlike_neighbours(&LEFT)?;
        let right = draw.pick(&RIGHT)?;
        let heights: Vec<u32> = scale.either(
            (91..=137).step_by(2).collect(),
            (37..=53).step_by(2).collect(),
        );
        let mut walls = Vec::new();
        for height in heights {
            for &top in scale.either([37, 39, 41, 43].as_slice(), &[15, 17]) {
                let wall = Self {
                    height: scale.marks(height),
                    top: scale.marks(top),
                    one_in: [left, right],
                };
                // Half as wide as high at the least, as at the other levels.
                let usual = wall.section().is_some_and(|section| {
                    section.height() <= section.base_width() * 2.0 + millimetres(0.01)
                });
                if usual {
                    walls.push(wall);
                }
            }
        }
        draw.pick(&walls)
    }

    fn section(&self) -> Option<Section> {
        let [left, right] = self.one_in.map(|n| Batter::one_in(f64::from(n)));
        Section::new(self.height, self.top, left.ok()?, right.ok()?).ok()
    }

    fn described(&self, scale: Scale) -> String {
        let [left, right] = self.one_in;
        format!(
            "A wall is {} high to the underside of the cope and {} wide there. Its left face has \
             a batter of 1 in {left}, its right face 1 in {right}.",
            scale.write(self.height),
            scale.write(self.top)
        )
    }

    /// `top + height ÷ 6 + height ÷ 9`, and what it comes to.
    fn sum(&self, height: Length, width: Length, scale: Scale) -> String {
        let [left, right] = self.one_in;
        let high = scale.in_sum(height);
        format!(
            "= {} + {high} ÷ {left} + {high} ÷ {right}\n= {}",
            scale.in_sum(self.top),
            scale.total(width)
        )
    }
}

/// The width at the ground.
pub(in super::super) fn base(draw: &mut Draw, scale: Scale, _: &Tables) -> Option<Question> {
    base_of(Uneven::draw(draw, scale)?, scale)
}

fn base_of(wall: Uneven, scale: Scale) -> Option<Question> {
    let width = wall.section()?.base_width();
    Some(Question {
        ask: format!("{} How wide is it at the ground?", wall.described(scale)),
        working: format!(
            "Width at the ground = top width + height ÷ n of the left face + height ÷ n of the \
             right face\n{}",
            wall.sum(wall.height, width, scale)
        ),
        answer: scale.write(width),
        tolerance: scale.tolerance(),
        value: width.si(),
        ..Question::of(Kind::BaseWidth)
    })
}

/// The width at a string.
pub(in super::super) fn at_string(draw: &mut Draw, scale: Scale, _: &Tables) -> Option<Question> {
    let wall = Uneven::draw(draw, scale)?;
    let strings: Vec<Length> = scale
        .either((23..=83).step_by(5), (9..=30).step_by(2))
        .map(|string| scale.marks(string))
        .filter(|string| *string + scale.marks(8) <= wall.height)
        .filter(|string| {
            let width = wall.section().map(|section| section.width_at(*string));
            width.is_some_and(|width| scale.write(width) != scale.write(*string))
        })
        .collect();
    at_string_of(wall, draw.pick(&strings)?, scale)
}

fn at_string_of(wall: Uneven, string: Length, scale: Scale) -> Option<Question> {
    let width = wall.section()?.width_at(string);
    let below = wall.height - string;
    Some(Question {
        ask: format!(
            "{} The strings are {} above the ground. How wide is the wall there?",
            wall.described(scale),
            scale.write(string)
        ),
        working: format!(
            "From the string to the top = height − height of the string\n= {} − {} = {}\n\
             Width at the string = top width + that ÷ n of each face\n{}",
            scale.in_sum(wall.height),
            scale.in_sum(string),
            scale.in_sum(below),
            wall.sum(below, width, scale)
        ),
        answer: scale.write(width),
        tolerance: scale.tolerance(),
        value: width.si(),
        ..Question::of(Kind::WidthAtString)
    })
}

/// The wide end of a gauge whose other end is a board's width.
pub(in super::super) fn gauge(draw: &mut Draw, scale: Scale, _: &Tables) -> Option<Question> {
    let one_in = draw.pick_unlike_neighbours(&GAUGES)?;
    let length = draw.pick(scale.either(
        [65, 75, 85, 95, 105, 115].as_slice(),
        &[25, 29, 33, 37, 41, 47],
    ))?;
    let narrow = draw.pick(scale.either([4, 5, 6, 7].as_slice(), &[2, 3, 4]))?;
    gauge_of(one_in, scale.marks(length), scale.marks(narrow), scale)
}

fn gauge_of(one_in: u32, length: Length, narrow: Length, scale: Scale) -> Option<Question> {
    let gauge = Gauge::of(Batter::one_in(f64::from(one_in)).ok()?, length);
    let width = narrow + gauge.width;
    if width <= metres(0.0) {
        return None;
    }
    Some(Question {
        ask: format!(
            "A batter gauge for 1 in {one_in} is a board {} long on its plumb edge. Its narrow \
             end is {} wide. How wide is the other?",
            scale.write(length),
            scale.write(narrow)
        ),
        working: format!(
            "The board widens by length ÷ {one_in}\n= {} ÷ {one_in} = {}\n\
             Width of the end = narrow end + that\n= {} + {}\n= {}",
            scale.in_sum(length),
            scale.mark_in_sum(gauge.width),
            scale.in_sum(narrow),
            scale.mark_in_sum(gauge.width),
            scale.total(width)
        ),
        answer: scale.write(width),
        tolerance: scale.tolerance(),
        value: width.si(),
        ..Question::of(Kind::GaugeOffset)
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Units;

    const METRES: Scale = Scale {
        units: Units::Metric,
    };
    const INCHES: Scale = Scale {
        units: Units::Imperial,
    };

    fn wall(height: u32, top: u32, one_in: [u32; 2], scale: Scale) -> Uneven {
        Uneven {
            height: scale.marks(height),
            top: scale.marks(top),
            one_in,
        }
    }

    /// By hand: 0.41 + 1.17/6 + 1.17/9 = 0.41 + 0.195 + 0.13 = 0.735 m, written 0.73 or 0.74;
    /// 15 + 45/5 + 45/9 = 29 in.
    #[test]
    fn each_face_adds_what_it_leans() {
        let metric = base_of(wall(117, 41, [6, 9], METRES), METRES).expect("sound");
        assert!((metric.value - 0.735).abs() < 1e-9);
        let imperial = base_of(wall(45, 15, [5, 9], INCHES), INCHES).expect("sound");
        assert_eq!(imperial.answer, "2 ft 5 in");
        assert!(
            imperial
                .working
                .ends_with("= 15 in + 45 in ÷ 5 + 45 in ÷ 9\n= 29 in, on the tape 2 ft 5 in")
        );
    }

    /// By hand: 1.13 − 0.23 = 0.90; 0.37 + 0.90/5 + 0.90/9 = 0.65 m.
    #[test]
    fn the_width_at_a_string_between_unlike_faces() {
        let wall = wall(113, 37, [5, 9], METRES);
        let question = at_string_of(wall, METRES.marks(23), METRES).expect("sound");
        assert_eq!(question.answer, "0.65 m");
    }

    /// By hand: 4 + 35/7 = 9 in; 0.05 + 0.91/13 = 0.12 m.
    #[test]
    fn a_gauge_that_comes_to_no_point() {
        let inches = gauge_of(7, INCHES.marks(35), INCHES.marks(4), INCHES).expect("sound");
        assert_eq!(inches.answer, "9 in");
        let metric = gauge_of(13, METRES.marks(91), METRES.marks(5), METRES).expect("sound");
        assert_eq!(metric.answer, "0.12 m");
    }
}
