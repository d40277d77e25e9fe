//! Widths and gauges in one step.

use super::super::draw::Draw;
use super::super::scale::Scale;
use super::super::wall::{BATTERS, Wall};
use super::super::widths::{self, Gauge};
use super::super::{Kind, Question};
use crate::quantity::{Length, Read, metres};
use crate::tables::Tables;
use crate::wall::Side;

/// Walls of level 1 are so many times as high as a face leans in.
const ONE_IN: u32 = 6;

/// The width at the ground, from what each face leans in.
pub(in super::super) fn base(draw: &mut Draw, scale: Scale, _: &Tables) -> Option<Question> {
    let leans = scale.either([14, 15, 16, 18, 20, 22].as_slice(), &[5, 6, 7, 8, 9, 10]);
    let lean = draw.pick_unlike_neighbours(leans)?;
    let top = draw.pick(scale.either([30, 35, 40, 45].as_slice(), &[12, 14, 16, 18]))?;
    base_of(lean, top, scale)
}

fn base_of(lean: u32, top: u32, scale: Scale) -> Option<Question> {
    let wall = Wall {
        height: scale.marks(ONE_IN * lean),
        top: scale.marks(top),
        one_in: ONE_IN,
    };
    let section = wall.section().ok()?;
    let leans = section.offset(Side::Left, wall.height) - section.offset(Side::Left, metres(0.0));
    let width = section.base_width();
    Some(Question {
        ask: format!(
            "A wall is {} wide under the cope. From the ground to there each face leans in by \
             {}. How wide is the wall at the ground?",
            scale.write(wall.top),
            scale.write(leans)
        ),
        working: format!(
            "Width at the ground = top width + 2 × what a face leans in\n= {} + 2 × {}\n= {}",
            scale.in_sum(wall.top),
            scale.in_sum(leans),
            scale.total(width)
        ),
        answer: scale.write(width),
        tolerance: scale.tolerance(),
        value: width.si(),
        ..Question::of(Kind::BaseWidth)
    })
}

/// The width at a string, from how far it is below the top.
pub(in super::super) fn at_string(draw: &mut Draw, scale: Scale, _: &Tables) -> Option<Question> {
    let one_in = draw.pick_unlike_neighbours(&BATTERS)?;
    let mut strings = Vec::new();
    for depth in scale.either(24..=72, 12..=36) {
        if depth % one_in != 0 {
            continue;
        }
        for &top in scale.either([30, 35, 40, 45].as_slice(), &[12, 14, 16, 18]) {
            // Else the answer would stand in the question.
            if top + 2 * depth / one_in != depth {
                strings.push((depth, top));
            }
        }
    }
    let (depth, top) = draw.pick(&strings)?;
    at_string_of(one_in, depth, top, scale)
}

fn at_string_of(one_in: u32, depth: u32, top: u32, scale: Scale) -> Option<Question> {
    // How high the wall is has no say: the string is given from the top.
    let below = scale.marks(depth);
    let wall = Wall {
        height: below * 2.0,
        top: scale.marks(top),
        one_in,
    };
    let width = wall.section().ok()?.width_at(wall.height - below);
    Some(Question {
        ask: format!(
            "A wall is {} wide under the cope. Both faces have a batter of 1 in {one_in}. The \
             strings are {} below the top. How wide is the wall there?",
            scale.write(wall.top),
            scale.write(below)
        ),
        working: format!(
            "Width at the string = top width + depth below the top ÷ {one_in} for each of the \
             two faces\n= {} + 2 × {} ÷ {one_in}\n= {}",
            scale.in_sum(wall.top),
            scale.in_sum(below),
            scale.total(width)
        ),
        answer: scale.write(width),
        tolerance: scale.tolerance(),
        value: width.si(),
        ..Question::of(Kind::WidthAtString)
    })
}

/// A gauge whose end comes to whole centimetres or inches.
pub(in super::super) fn gauge(draw: &mut Draw, scale: Scale, _: &Tables) -> Option<Question> {
    let one_in = draw.pick_unlike_neighbours(&BATTERS)?;
    let lengths: Vec<Length> = scale
        .either(48..=120, 20..=60)
        .filter(|length| length % one_in == 0)
        .map(|length| scale.marks(length))
        .collect();
    let length = draw.pick(&lengths)?;
    widths::gauge(Gauge { length, one_in }, scale)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Units;

    /// By hand: 0.40 + 2 · 0.15 = 0.70 m; 16 + 2 · 7 = 30 in.
    #[test]
    fn the_width_at_the_ground_in_one_step() {
        let metric = base_of(15, 40, Scale::of(Units::Metric)).expect("sound");
        assert_eq!(metric.answer, "0.70 m");
        assert_eq!(
            metric.working,
            "Width at the ground = top width + 2 × what a face leans in\n\
             = 0.40 m + 2 × 0.15 m\n= 0.70 m"
        );
        let imperial = base_of(7, 16, Scale::of(Units::Imperial)).expect("sound");
        assert_eq!(imperial.answer, "2 ft 6 in");
    }

    /// By hand: 0.40 + 2 · 0.48/8 = 0.52 m; 16 + 2 · 24/8 = 22 in.
    #[test]
    fn the_width_at_a_string_in_one_step() {
        let metric = at_string_of(8, 48, 40, Scale::of(Units::Metric)).expect("sound");
        assert_eq!(metric.answer, "0.52 m");
        let imperial = at_string_of(8, 24, 16, Scale::of(Units::Imperial)).expect("sound");
        assert_eq!(imperial.answer, "1 ft 10 in");
    }
}
