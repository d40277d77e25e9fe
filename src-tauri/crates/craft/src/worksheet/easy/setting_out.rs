//! Frames and bars in one step.

use super::super::draw::Draw;
use super::super::scale::Scale;
use super::super::setting_out::{CLEAR_OF_STOCK_M, Frame, Line, frames_given, or};
use super::super::{Kind, Question, setting_out};
use crate::frames::{Bars, Frames};
use crate::quantity::{Length, Read, metres};
use crate::tables::{Bar, Tables};
use crate::wall::{Batter, Section, Wall as Standing};

/// Frames along a wall that is a whole number of bays long.
pub(in super::super) fn frames_and_bars(
    draw: &mut Draw,
    scale: Scale,
    tables: &Tables,
) -> Option<Question> {
    let bays = draw.pick_unlike_neighbours(&[2, 3, 4, 5, 6, 7])?;
    let spacing =
        draw.pick(scale.either([100, 150, 200, 250, 300].as_slice(), &[48, 60, 72, 96]))?;
    let line = Line {
        length: scale.marks(bays * spacing),
        spacing: scale.marks(spacing),
    };
    setting_out::frames_and_bars(line, scale, &tables.bars)
}

/// The bar of a plumb face.
pub(in super::super) fn bar_length(
    draw: &mut Draw,
    scale: Scale,
    tables: &Tables,
) -> Option<Question> {
    let heights: Vec<u32> = scale.either(
        (90..=140).step_by(5).collect(),
        (36..=56).step_by(2).collect(),
    );
    let height = scale.marks(draw.pick_unlike_neighbours(&heights)?);
    let in_ground = scale.marks(draw.pick(&scale.either([40, 45, 50], [16, 18, 20]))?);
    let above = scale.marks(draw.pick(&scale.either([10, 15, 20], [4, 6, 8]))?);
    plumb_bar(height, in_ground, above, scale, &tables.bars)
}

fn plumb_bar(
    height: Length,
    in_ground: Length,
    above: Length,
    scale: Scale,
    bars: &[Bar],
) -> Option<Question> {
    let frame = Frame {
        in_ground,
        above,
        ..Frame::usual(scale)
    };
    let section = Section::new(height, frame.wall.top, Batter::PLUMB, Batter::PLUMB).ok()?;
    let mut given = frames_given(metres(1.0), &frame, bars.first()?);
    // A length that is sold and just fits would be a question of rounding.
    let sum = (height + in_ground + above).si();
    given
        .stock_lengths
        .retain(|stock| CLEAR_OF_STOCK_M < (stock.si() - sum).abs());
    let standing = Standing::plain(section, metres(1.0));
    let frames = Frames::set_out(&frame.wall.given().ok()?, &standing, &given, bars).ok()?;
    let Bars { needed, chosen, .. } = frames.bars?;
    let chosen = chosen?;
    let sold: Vec<String> = given
        .stock_lengths
        .iter()
        .map(|&stock| scale.write(stock))
        .collect();
    Some(Question {
        ask: format!(
            "A face is plumb, so its bars stand upright. The board is {} above the ground; {} of \
             a bar goes into the ground and {} stands out above the board. How long must a bar \
             be at least? Bars are sold {} long: which do you take?",
            scale.write(height),
            scale.write(in_ground),
            scale.write(above),
            or(&sold)
        ),
        working: format!(
            "Bar = ground to board + in the ground + above the board\n= {} + {} + {}\n= {}\n\
             The shortest that is long enough: {}",
            scale.in_sum(height),
            scale.in_sum(in_ground),
            scale.in_sum(above),
            scale.total(needed),
            scale.write(chosen)
        ),
        answer: format!("{}; take {}", scale.write(needed), scale.write(chosen)),
        tolerance: format!("{}; exact which bar", scale.tolerance()),
        value: needed.si(),
        ..Question::of(Kind::BarLength)
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Units;
    use crate::worksheet::sample;

    /// By hand: 1.05 + 0.45 + 0.15 = 1.65 m, of 1.50, 1.80 and 2.40 the second.
    #[test]
    fn an_upright_bar_is_a_plain_sum() {
        let scale = Scale::of(Units::Metric);
        let [height, in_ground, above] = [105, 45, 15].map(|marks| scale.marks(marks));
        let bars = sample::tables().bars;
        let question = plumb_bar(height, in_ground, above, scale, &bars).expect("sound");
        assert_eq!(question.answer, "1.65 m; take 1.80 m");
        assert!(
            question
                .working
                .contains("= 1.05 m + 0.45 m + 0.15 m\n= 1.65 m\n")
        );
    }

    /// By hand: 48 + 18 + 6 = 72 in is one of the lengths sold, which is then not offered.
    #[test]
    fn a_bar_that_just_fits_is_not_asked_about() {
        let scale = Scale::of(Units::Imperial);
        let [height, in_ground, above] = [48, 18, 6].map(|marks| scale.marks(marks));
        let bars = sample::tables().bars;
        let question = plumb_bar(height, in_ground, above, scale, &bars).expect("sound");
        assert_eq!(question.answer, "6 ft; take 8 ft");
        assert!(question.ask.contains("sold 5 ft or 8 ft long"));
    }
}
