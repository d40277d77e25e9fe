//! Questions about the batter of a face that was measured at two places.

use super::draw::Draw;
use super::scale::{Scale, number};
use super::wall::{BATTERS, Wall, heights, tops};
use super::{Kind, Question};
use crate::frames::Gauge;
use crate::quantity::{Length, metres};
use crate::tables::Tables;
use crate::wall::Batter;

/// The n of the odd batters of level 3, in halves: 5 1/2, 6 1/2 and so on.
const HALVES: [u32; 4] = [11, 13, 15, 17];

fn asked(n: f64, ask: String, working: String) -> Option<Question> {
    Some(Question {
        ask,
        working,
        answer: format!("1 in {}", number(n, 1)),
        value: n,
        ..Question::of(Kind::Batter)
    })
}

/// Level 1: how far a plumb line through the foot of a face hangs clear of it higher up.
pub(super) fn plumb_line(draw: &mut Draw, scale: Scale, _: &Tables) -> Option<Question> {
    let one_in = draw.pick_unlike_neighbours(&[5, 6, 8, 10])?;
    let rises: Vec<u32> = scale
        .either(60..=140, 24..=60)
        .filter(|rise| rise % one_in == 0)
        .collect();
    plumb_line_of(one_in, scale.marks(draw.pick(&rises)?), scale)
}

fn plumb_line_of(one_in: u32, rise: Length, scale: Scale) -> Option<Question> {
    let n = f64::from(one_in);
    let clear = Gauge::of(Batter::one_in(n).ok()?, rise).width;
    asked(
        n,
        format!(
            "A plumb line is held out so that it just touches the foot of a face. {} above the \
             foot it hangs {} clear of the face. What is the batter?",
            scale.write(rise),
            scale.write(clear)
        ),
        format!(
            "Batter = 1 in (height ÷ how far the face leans)\n= 1 in ({} ÷ {})\n= 1 in {one_in}",
            scale.in_sum(rise),
            scale.in_sum(clear)
        ),
    )
}

/// Level 2: the widths of a wall at two heights.
pub(super) fn two_widths(draw: &mut Draw, scale: Scale, _: &Tables) -> Option<Question> {
    let one_in = draw.pick_unlike_neighbours(&BATTERS)?;
    let mut walls = Vec::new();
    for height in heights(scale) {
        for &top in tops(scale) {
            let wall = Wall {
                height: scale.marks(height),
                top: scale.marks(top),
                one_in,
            };
            if scale.comes_out(height, one_in) && wall.is_usual() {
                walls.push(wall);
            }
        }
    }
    two_widths_of(draw.pick(&walls)?, scale)
}

fn two_widths_of(wall: Wall, scale: Scale) -> Option<Question> {
    let section = wall.section().ok()?;
    let (base, top, high) = (section.base_width(), section.top_width(), section.height());
    let leans = (base - top) / 2.0;
    asked(
        f64::from(wall.one_in),
        format!(
            "Both faces of a wall lean alike. At the ground it is {} wide, and {} higher up {}. \
             What is the batter?",
            scale.write(base),
            scale.write(high),
            scale.write(top)
        ),
        format!(
            "Each face leans in by (width below − width above) ÷ 2\n= ({} − {}) ÷ 2 = {}\n\
             Batter = 1 in (height ÷ that)\n= 1 in ({} ÷ {})\n= 1 in {}",
            scale.in_sum(base),
            scale.in_sum(top),
            scale.in_sum(leans),
            scale.in_sum(high),
            scale.in_sum(leans),
            wall.one_in
        ),
    )
}

/// A plumb line beside a face, measured at two heights.
#[derive(Debug, Clone, Copy)]
struct Beside {
    /// Twice the n of the batter.
    halves: u32,
    /// From the lower place to the upper one.
    rise: Length,
    /// The lower place above the ground.
    low: Length,
    /// From the line to the face at the lower place.
    off: Length,
}

/// Level 3: how far a face is off a plumb line at two heights.
pub(super) fn two_offsets(draw: &mut Draw, scale: Scale, _: &Tables) -> Option<Question> {
    let halves = draw.pick_unlike_neighbours(&HALVES)?;
    let rises: Vec<u32> = scale
        .either(52..=95, 20..=46)
        .filter(|rise: &u32| (2 * rise).is_multiple_of(halves))
        .collect();
    let beside = Beside {
        halves,
        rise: scale.marks(draw.pick(&rises)?),
        low: scale.marks(draw.pick(scale.either([13, 17, 21, 26].as_slice(), &[5, 7, 9]))?),
        off: scale.marks(draw.pick(scale.either([3, 4, 6, 7].as_slice(), &[1, 2, 3]))?),
    };
    two_offsets_of(beside, scale)
}

fn two_offsets_of(beside: Beside, scale: Scale) -> Option<Question> {
    let n = f64::from(beside.halves) / 2.0;
    let leans = Gauge::of(Batter::one_in(n).ok()?, beside.rise).width;
    if leans <= metres(0.0) {
        return None;
    }
    let (high, far) = (beside.low + beside.rise, beside.off + leans);
    asked(
        n,
        format!(
            "A plumb line hangs in front of a face, clear of it. {} above the ground it is {} \
             from the face, {} above the ground {}. What is the batter?",
            scale.write(beside.low),
            scale.write(beside.off),
            scale.write(high),
            scale.write(far)
        ),
        format!(
            "Between the two places the face goes up {} − {} = {}\n\
             and back {} − {} = {}\nBatter = 1 in (up ÷ back)\n= 1 in ({} ÷ {})\n= 1 in {}",
            scale.in_sum(high),
            scale.in_sum(beside.low),
            scale.in_sum(beside.rise),
            scale.in_sum(far),
            scale.in_sum(beside.off),
            scale.in_sum(leans),
            scale.in_sum(beside.rise),
            scale.in_sum(leans),
            number(n, 1)
        ),
    )
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

    /// By hand: 0.90 ÷ 6 = 0.15 m; 48 ÷ 8 = 6 in.
    #[test]
    fn a_plumb_line_shows_the_batter() {
        let metric = plumb_line_of(6, METRES.marks(90), METRES).expect("sound");
        assert!(metric.ask.contains("0.15 m"), "{}", metric.ask);
        assert_eq!(metric.answer, "1 in 6");
        let imperial = plumb_line_of(8, INCHES.marks(48), INCHES).expect("sound");
        assert!(imperial.ask.contains("6 in"), "{}", imperial.ask);
        assert_eq!(imperial.answer, "1 in 8");
    }

    /// By hand: a wall 42 in high, 30 in at the ground and 16 in at the top: (30 − 16) ÷ 2 = 7;
    /// 42 ÷ 7 = 6.
    #[test]
    fn two_widths_show_the_batter() {
        let wall = Wall {
            height: INCHES.marks(42),
            top: INCHES.marks(16),
            one_in: 6,
        };
        let question = two_widths_of(wall, INCHES).expect("sound");
        assert_eq!(
            question.working,
            "Each face leans in by (width below − width above) ÷ 2\n= (30 in − 16 in) ÷ 2 = 7 in\n\
             Batter = 1 in (height ÷ that)\n= 1 in (42 in ÷ 7 in)\n= 1 in 6"
        );
    }

    /// By hand: 0.65 up and 0.10 back is 1 in 6.5.
    #[test]
    fn two_offsets_show_the_batter() {
        let beside = Beside {
            halves: 13,
            rise: METRES.marks(65),
            low: METRES.marks(21),
            off: METRES.marks(4),
        };
        let question = two_offsets_of(beside, METRES).expect("sound");
        assert_eq!(question.answer, "1 in 6.5");
        assert!(question.ask.contains("0.86 m above the ground 0.14 m"));
    }
}
