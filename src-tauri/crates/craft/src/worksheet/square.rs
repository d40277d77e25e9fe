//! Questions about squareness: a right angle pegged out, and the diagonal between two frames.

use super::draw::Draw;
use super::scale::Scale;
use super::setting_out::{Frame, frames_given};
use super::wall::{BATTERS, Wall};
use super::{Kind, Question};
use crate::frames::{Bay, FrameRow, Frames};
use crate::quantity::{Length, Read, metres, show_mark};
use crate::tables::{Bar, Tables};
use crate::wall::{Batter, Ground, Section, Side, Survey, Wall as Standing};

/// Two frames and the bay between them, on ground so much lower at the second.
fn two_frames(
    section: Section,
    length: Length,
    lower: Length,
    scale: Scale,
    bars: &[Bar],
) -> Option<([FrameRow; 2], Bay)> {
    let frame = Frame::usual(scale);
    let survey = |station, level| Survey {
        station,
        level,
        left: level,
        right: level,
    };
    let zero = metres(0.0);
    let standing = Standing {
        ground: Ground::new(vec![survey(zero, zero), survey(length, zero - lower)]),
        ..Standing::plain(section, length)
    };
    let given = frames_given(length, &frame, bars.first()?);
    let frames = Frames::set_out(&frame.wall.given().ok()?, &standing, &given, bars).ok()?;
    match (frames.rows.as_slice(), frames.bays.as_slice()) {
        ([first, second], [bay]) => Some(([*first, *second], *bay)),
        _ => None,
    }
}

/// Level 1: a right angle by the sides 3, 4 and 5.
pub(super) fn right_angle(draw: &mut Draw, scale: Scale, tables: &Tables) -> Option<Question> {
    let units: Vec<u32> = scale.either(
        vec![15, 20, 25, 30, 40, 45, 50, 60],
        vec![6, 12, 18, 24, 30, 36],
    );
    let unit = draw.pick_unlike_neighbours(&units)?;
    let (along, across) = draw.pick(&[(3, 4), (4, 3)])?;
    let sides = [along, across].map(|times| scale.marks(times * unit));
    angle_of(sides, unit, scale, &tables.bars)
}

fn angle_of(
    [along, across]: [Length; 2],
    unit: u32,
    scale: Scale,
    bars: &[Bar],
) -> Option<Question> {
    // Two plumb frames of this width, this far apart, have the same diagonal.
    let section = Section::new(across, across, Batter::PLUMB, Batter::PLUMB).ok()?;
    let (_, bay) = two_frames(section, along, metres(0.0), scale, bars)?;
    let [diagonal, _] = bay.diagonals;
    Some(Question {
        ask: format!(
            "A corner is pegged: {} along the line, and {} from there to the side. How long must \
             the third side be for a right angle?",
            scale.write(along),
            scale.write(across)
        ),
        working: format!(
            "Sides of 3, 4 and 5 make a right angle; here one part is {}\n\
             Third side = 5 × {} = {}",
            scale.in_sum(scale.marks(unit)),
            scale.in_sum(scale.marks(unit)),
            scale.total(diagonal)
        ),
        answer: scale.write(diagonal),
        tolerance: scale.tolerance(),
        value: diagonal.si(),
        ..Question::of(Kind::Squareness)
    })
}

/// Level 2: the diagonal between two frames that are alike.
pub(super) fn between_frames(draw: &mut Draw, scale: Scale, tables: &Tables) -> Option<Question> {
    let bays: Vec<u32> = scale.either(
        vec![150, 180, 200, 220, 240, 250, 280, 300],
        vec![60, 66, 72, 84, 90, 96, 108, 120],
    );
    let length = scale.marks(draw.pick_unlike_neighbours(&bays)?);
    let wall = Wall::draw(draw, scale)?;
    diagonal_of(
        wall.section().ok()?,
        length,
        metres(0.0),
        scale,
        &tables.bars,
    )
}

/// Level 3: the diagonal between two frames on ground that falls along the wall.
pub(super) fn on_a_slope(draw: &mut Draw, scale: Scale, tables: &Tables) -> Option<Question> {
    let bays: Vec<u32> = scale.either(
        vec![165, 185, 215, 235, 255, 275],
        vec![62, 70, 77, 87, 99, 111],
    );
    let length = scale.marks(draw.pick_unlike_neighbours(&bays)?);
    let lower = scale.marks(draw.pick(scale.either([24, 30, 36, 42].as_slice(), &[8, 12, 16]))?);
    let wall = Wall {
        height: scale.marks(draw.pick(scale.either([99, 107, 113].as_slice(), &[41, 45]))?),
        top: scale.marks(draw.pick(scale.either([38, 42, 44].as_slice(), &[16, 18]))?),
        one_in: draw.pick(&BATTERS)?,
    };
    diagonal_of(wall.section().ok()?, length, lower, scale, &tables.bars)
}

fn diagonal_of(
    section: Section,
    length: Length,
    lower: Length,
    scale: Scale,
    bars: &[Bar],
) -> Option<Question> {
    let ([first, second], bay) = two_frames(section, length, lower, scale, bars)?;
    let level = lower <= metres(0.0);
    // The student adds what the question prints, not what was set out before it was rounded.
    let offsets = [first.offset(Side::Left), second.offset(Side::Right)];
    let [left, right] = offsets.map(|offset| scale.as_in_sum(offset));
    let (across, diagonal) = if level {
        (offsets[0] + offsets[1], bay.diagonals[0])
    } else {
        let across = left + right;
        let squares = [length, across, lower].map(|side| side.si() * side.si());
        (across, metres(squares.iter().sum::<f64>().sqrt()))
    };
    let sum = |length: Length| scale.mark_in_sum(length);
    let mark = |length: Length| show_mark(length, scale.units);
    let (described, falls) = if level {
        (
            format!(
                "Two frames stand {} apart on level ground. At the ground the wall is {} wide at \
                 both.",
                scale.write(length),
                scale.write(first.base_width())
            ),
            String::new(),
        )
    } else {
        (
            format!(
                "Two frames stand {} apart, measured level. The bars of the first are {} from the \
                 centre line at the ground, those of the second {}; the ground at the second is {} \
                 lower.",
                scale.write(length),
                mark(offsets[0]),
                mark(offsets[1]),
                scale.write(lower)
            ),
            format!(" + ({})²", sum(lower)),
        )
    };
    let added = if level {
        String::new()
    } else {
        format!(
            "Across = {} + {} = {}\n",
            sum(left),
            sum(right),
            sum(across)
        )
    };
    Some(Question {
        ask: format!(
            "{described} How long is the diagonal, from the left bar of the first to the right bar \
             of the second, if they stand square?"
        ),
        working: format!(
            "{added}Diagonal = √(along² + across²{})\n= √(({})² + ({})²{falls})\n= {}",
            if level { "" } else { " + fall²" },
            sum(length),
            sum(across),
            scale.total(diagonal)
        ),
        answer: scale.write(diagonal),
        tolerance: scale.tolerance(),
        value: diagonal.si(),
        ..Question::of(Kind::Squareness)
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Units;
    use crate::worksheet::sample;

    const METRES: Scale = Scale {
        units: Units::Metric,
    };
    const INCHES: Scale = Scale {
        units: Units::Imperial,
    };

    /// Euclid, Elements I.48 with the sides 3, 4 and 5: 0.90, 1.20 and 1.50 m; 3, 4 and 5 ft.
    #[test]
    fn three_four_five_is_a_right_angle() {
        let bars = sample::tables().bars;
        let sides = [90, 120].map(|marks| METRES.marks(marks));
        let metric = angle_of(sides, 30, METRES, &bars).expect("sound");
        assert_eq!(metric.answer, "1.50 m");
        let sides = [48, 36].map(|marks| INCHES.marks(marks));
        let imperial = angle_of(sides, 12, INCHES, &bars).expect("sound");
        assert_eq!(imperial.answer, "5 ft");
    }

    /// By hand, sides of 5, 12 and 13: frames 2.40 m apart and 1.00 m wide: 2.60 m.
    #[test]
    fn the_diagonal_of_two_frames() {
        let section = Section::new(
            METRES.marks(120),
            METRES.marks(60),
            Batter::one_in(6.0).expect("sound"),
            Batter::one_in(6.0).expect("sound"),
        );
        let section = section.expect("sound");
        let bars = sample::tables().bars;
        let level = metres(0.0);
        let question =
            diagonal_of(section, METRES.marks(240), level, METRES, &bars).expect("sound");
        assert_eq!(question.answer, "2.60 m");
        assert_eq!(
            question.working,
            "Diagonal = √(along² + across²)\n= √((2.40 m)² + (1.00 m)²)\n= 2.60 m"
        );
    }

    /// By hand: 0.300/6 and 0.318/6 m more than half of 0.5052 m are 0.3026 and 0.3056 m, printed
    /// as 0.303 and 0.306 m: the sum is of these, and not 0.608 m.
    #[test]
    fn across_is_the_sum_of_the_offsets_printed() {
        let section = Section::new(
            metres(0.30),
            metres(0.5052),
            Batter::one_in(6.0).expect("sound"),
            Batter::one_in(6.0).expect("sound"),
        );
        let section = section.expect("sound");
        let bars = sample::tables().bars;
        let question = diagonal_of(section, METRES.marks(200), metres(0.018), METRES, &bars);
        let working = question.expect("sound").working;
        assert!(
            working.starts_with("Across = 0.303 m + 0.306 m = 0.609 m\n"),
            "{working}"
        );
    }

    /// By hand: 1 in 6, 0.40 m wide, 1.20 m high and 0.30 m more: offsets 0.40 and 0.45 m,
    /// √(2.00² + 0.85² + 0.30²) = √4.8125 = 2.1937 m.
    #[test]
    fn a_tape_from_high_to_low_ground_is_longer() {
        let wall = Wall {
            height: METRES.marks(120),
            top: METRES.marks(40),
            one_in: 6,
        };
        let bars = sample::tables().bars;
        let (length, lower) = (METRES.marks(200), METRES.marks(30));
        let section = wall.section().expect("sound");
        let question = diagonal_of(section, length, lower, METRES, &bars).expect("sound");
        assert!((question.value - 2.1937).abs() < 5e-5);
        assert_eq!(question.answer, "2.19 m");
        assert!(
            question
                .working
                .starts_with("Across = 0.40 m + 0.45 m = 0.85 m\n")
        );
    }
}
