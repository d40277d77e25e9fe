//! Questions about how wide a wall is, and how far its faces lean.

use super::draw::Draw;
use super::scale::Scale;
use super::wall::{BATTERS, Wall, heights, tops};
use super::{Kind, Question};
use crate::quantity::{Length, Read, metres};
use crate::tables::Tables;
use crate::wall::Side;

/// Strings are asked about at least this far from the ground and from the top, in marks.
const CLEAR: (u32, u32) = (20, 8);

/// How the wall is described in every question about its width.
fn described(wall: &Wall, scale: Scale) -> String {
    format!(
        "A wall is {} high to the underside of the cope and {} wide there. Both faces have a \
         batter of 1 in {}.",
        scale.write(wall.height),
        scale.write(wall.top),
        wall.one_in
    )
}

/// A student's own width at the ground.
pub(super) fn ask_base(draw: &mut Draw, scale: Scale, _: &Tables) -> Option<Question> {
    base(Wall::draw(draw, scale)?, scale)
}

/// A student's own width at a string.
pub(super) fn ask_at_string(draw: &mut Draw, scale: Scale, _: &Tables) -> Option<Question> {
    at_string(AtString::draw(draw, scale)?, scale)
}

/// A student's own gauge.
pub(super) fn ask_gauge(draw: &mut Draw, scale: Scale, _: &Tables) -> Option<Question> {
    gauge(Gauge::draw(draw, scale)?, scale)
}

/// The width at the ground.
pub(super) fn base(wall: Wall, scale: Scale) -> Option<Question> {
    let width = wall.section().ok()?.base_width();
    Some(Question {
        ask: format!("{} How wide is it at the ground?", described(&wall, scale)),
        working: format!(
            "Width at the ground = top width + height ÷ {n} for each of the two faces\n\
             = {} + 2 × {} ÷ {n}\n= {}",
            scale.in_sum(wall.top),
            scale.in_sum(wall.height),
            scale.total(width),
            n = wall.one_in
        ),
        answer: scale.write(width),
        tolerance: scale.tolerance(),
        value: width.si(),
        ..Question::of(Kind::BaseWidth)
    })
}

/// A wall and a string on it.
#[derive(Debug, Clone, Copy)]
pub(super) struct AtString {
    pub(super) wall: Wall,
    /// Above the ground.
    pub(super) string: Length,
}

impl AtString {
    /// A string at which the width comes out. Neighbours differ in batter.
    pub(super) fn draw(draw: &mut Draw, scale: Scale) -> Option<Self> {
        let one_in = draw.pick_unlike_neighbours(&BATTERS)?;
        let clear = scale.either(CLEAR.0, CLEAR.1);
        let mut strings = Vec::new();
        for height in heights(scale) {
            for string in (clear..=height - clear).step_by(scale.either(10, 2)) {
                if !scale.comes_out(2 * (height - string), one_in) {
                    continue;
                }
                strings.extend(tops(scale).iter().map(|&top| Self {
                    wall: Wall {
                        height: scale.marks(height),
                        top: scale.marks(top),
                        one_in,
                    },
                    string: scale.marks(string),
                }));
            }
        }
        strings.retain(|at| at.is_usual(scale));
        draw.pick(&strings)
    }

    /// A usual wall, and the answer isn't in the question as the height of the string.
    fn is_usual(&self, scale: Scale) -> bool {
        let string = scale.write(self.string);
        self.wall.is_usual()
            && self
                .wall
                .section()
                .is_ok_and(|section| scale.write(section.width_at(self.string)) != string)
    }
}

/// The width at a string.
pub(super) fn at_string(at: AtString, scale: Scale) -> Option<Question> {
    let wall = at.wall;
    let width = wall.section().ok()?.width_at(at.string);
    Some(Question {
        ask: format!(
            "{} The strings are {} above the ground. How wide is the wall there?",
            described(&wall, scale),
            scale.write(at.string)
        ),
        working: format!(
            "From the string to the top = height − height of the string\n= {} − {} = {}\n\
             Width at the string = top width + that ÷ {n} for each of the two faces\n\
             = {} + 2 × {} ÷ {n}\n= {}",
            scale.in_sum(wall.height),
            scale.in_sum(at.string),
            scale.in_sum(wall.height - at.string),
            scale.in_sum(wall.top),
            scale.in_sum(wall.height - at.string),
            scale.total(width),
            n = wall.one_in
        ),
        answer: scale.write(width),
        tolerance: scale.tolerance(),
        value: width.si(),
        ..Question::of(Kind::WidthAtString)
    })
}

/// A batter gauge.
#[derive(Debug, Clone, Copy)]
pub(super) struct Gauge {
    /// Of its plumb edge.
    pub(super) length: Length,
    pub(super) one_in: u32,
}

impl Gauge {
    /// A gauge whose end comes out. Neighbours differ in batter.
    pub(super) fn draw(draw: &mut Draw, scale: Scale) -> Option<Self> {
        let one_in = draw.pick_unlike_neighbours(&BATTERS)?;
        let lengths: Vec<u32> = scale
            .either(
                [60, 70, 80, 90, 100, 120].as_slice(),
                [24, 30, 36, 42, 45, 48, 50].as_slice(),
            )
            .iter()
            .copied()
            .filter(|length| scale.comes_out(*length, one_in))
            .collect();
        Some(Self {
            length: scale.marks(draw.pick(&lengths)?),
            one_in,
        })
    }
}

/// The wide end of a batter gauge.
pub(super) fn gauge(gauge: Gauge, scale: Scale) -> Option<Question> {
    // Any wall as high as the gauge will do: the gauge is what one face leans in.
    let wall = Wall {
        height: gauge.length,
        top: gauge.length,
        one_in: gauge.one_in,
    };
    let section = wall.section().ok()?;
    let width = section.offset(Side::Left, gauge.length) - section.offset(Side::Left, metres(0.0));
    Some(Question {
        ask: format!(
            "A batter gauge for 1 in {} is {} long on its plumb edge. One end comes to \
             nothing. How wide is the other?",
            gauge.one_in,
            scale.write(gauge.length)
        ),
        working: format!(
            "Width of the end = length ÷ {n}\n= {} ÷ {n}\n= {}",
            scale.in_sum(gauge.length),
            scale.total(width),
            n = gauge.one_in
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
    use crate::quantity::{INCH_M, Units};

    const INCHES: Scale = Scale {
        units: Units::Imperial,
    };
    const METRES: Scale = Scale {
        units: Units::Metric,
    };

    fn forty_two_by_sixteen() -> Wall {
        Wall {
            height: INCHES.marks(42),
            top: INCHES.marks(16),
            one_in: 6,
        }
    }

    /// By hand: 16 + 2 · 42/6 = 30 in.
    #[test]
    fn the_width_at_the_ground() {
        let question = base(forty_two_by_sixteen(), INCHES).expect("a sound wall");
        assert_eq!(
            question.ask,
            "A wall is 3 ft 6 in high to the underside of the cope and 1 ft 4 in wide there. \
             Both faces have a batter of 1 in 6. How wide is it at the ground?"
        );
        assert_eq!(
            question.working,
            "Width at the ground = top width + height ÷ 6 for each of the two faces\n\
             = 16 in + 2 × 42 in ÷ 6\n= 30 in, on the tape 2 ft 6 in"
        );
        assert_eq!(question.answer, "2 ft 6 in");
        assert_eq!(question.tolerance, "within 1/4 in (6 mm)");
        assert!((question.value - 30.0 * INCH_M).abs() < 1e-9);
    }

    /// By hand: 0.40 + 2 · 1.20/8 = 0.70 m.
    #[test]
    fn the_width_at_the_ground_in_metres() {
        let wall = Wall {
            height: METRES.marks(120),
            top: METRES.marks(40),
            one_in: 8,
        };
        let question = base(wall, METRES).expect("a sound wall");
        assert_eq!(question.answer, "0.70 m");
        assert_eq!(question.tolerance, "within 1 cm (3/8 in)");
        assert!(
            question
                .working
                .ends_with("= 0.40 m + 2 × 1.20 m ÷ 8\n= 0.70 m")
        );
    }

    /// By hand: the string at 24 in is 18 in below the top; 16 + 2 · 18/6 = 22 in.
    #[test]
    fn the_width_at_a_string() {
        let at = AtString {
            wall: forty_two_by_sixteen(),
            string: INCHES.marks(24),
        };
        let question = at_string(at, INCHES).expect("a sound wall");
        assert!(
            question
                .ask
                .contains("The strings are 2 ft above the ground.")
        );
        assert_eq!(
            question.working,
            "From the string to the top = height − height of the string\n\
             = 42 in − 24 in = 18 in\n\
             Width at the string = top width + that ÷ 6 for each of the two faces\n\
             = 16 in + 2 × 18 in ÷ 6\n= 22 in, on the tape 1 ft 10 in"
        );
        assert_eq!(question.answer, "1 ft 10 in");
        assert!((question.value - 22.0 * INCH_M).abs() < 1e-9);
    }

    /// By hand: a gauge of 4 ft at 1 in 6: 48/6 = 8 in.
    #[test]
    fn the_wide_end_of_a_gauge() {
        let four_feet = Gauge {
            length: INCHES.marks(48),
            one_in: 6,
        };
        let question = gauge(four_feet, INCHES).expect("a sound gauge");
        assert_eq!(
            question.ask,
            "A batter gauge for 1 in 6 is 4 ft long on its plumb edge. One end comes to \
             nothing. How wide is the other?"
        );
        assert_eq!(
            question.working,
            "Width of the end = length ÷ 6\n= 48 in ÷ 6\n= 8 in"
        );
        assert_eq!(question.answer, "8 in");
        assert!((question.value - 8.0 * INCH_M).abs() < 1e-9);
    }
}
