//! The question of a frame's marks where the ground is not level.

use super::draw::Draw;
use super::scale::Scale;
use super::wall::{BATTERS, Wall, heights, tops};
use super::{Kind, Level, Question};
use crate::quantity::{Length, Read, metres};
use crate::wall::{Ground, Side, Survey, Wall as Standing};

/// A wall with a level top, and how much lower than at station 0 the ground is at a frame.
#[derive(Debug, Clone, Copy)]
struct Frame {
    wall: Wall,
    station: Length,
    /// At the left face and at the right one; less than nothing where it is higher.
    lower: [Length; 2],
}

impl Frame {
    /// Neighbours differ in batter, or at level 1 in what the ground falls.
    fn draw(draw: &mut Draw, scale: Scale, level: Level) -> Option<Self> {
        let one_in = draw.pick_unlike_neighbours(&BATTERS)?;
        let falls = match level {
            Level::Easy => draw.half(scale.either(&[5, 8, 10, 12, 15, 20], &[2, 3, 4, 5, 6, 8])),
            Level::Usual => scale.either(vec![6, 9, 12, 15, 18], vec![3, 4, 6, 8]),
            Level::Hard => scale.either(vec![7, 11, 13, 17], vec![3, 5, 7, 9]),
        };
        let across = match level {
            Level::Hard => draw.pick(&scale.either([3, 5, 6], [1, 2, 3]))?,
            _ => 0,
        };
        let station = draw.pick(&scale.either([300, 400, 600, 900], [120, 144, 240, 300]))?;
        let mut frames = Vec::new();
        for height in heights(scale) {
            for &top in tops(scale) {
                for &fall in &falls {
                    let frame = Self {
                        wall: Wall {
                            height: scale.marks(height),
                            top: scale.marks(top),
                            one_in,
                        },
                        station: scale.marks(station),
                        lower: [fall + across, fall].map(|marks| scale.marks(marks)),
                    };
                    let even = top % 2 == 0 && scale.comes_out(height + fall, one_in);
                    let fits = level != Level::Usual || even;
                    if fits && frame.wall.is_usual() && frame.gives_nothing_away(scale) {
                        frames.push(frame);
                    }
                }
            }
        }
        draw.pick(&frames)
    }

    /// Whether no offset stands in the question already, as the width of the top.
    fn gives_nothing_away(&self, scale: Scale) -> bool {
        let top = scale.write(self.wall.top);
        self.standing().is_some_and(|standing| {
            Side::BOTH
                .into_iter()
                .all(|side| scale.write(standing.offset(side, self.station)) != top)
        })
    }

    fn standing(&self) -> Option<Standing> {
        let zero = metres(0.0);
        let [left, right] = self.lower.map(|lower| zero - lower);
        let survey = |station, left: Length, right: Length| Survey {
            station,
            level: (left + right) / 2.0,
            left,
            right,
        };
        Some(Standing {
            ground: Ground::new(vec![
                survey(zero, zero, zero),
                survey(self.station, left, right),
            ]),
            ..Standing::plain(self.wall.section().ok()?, self.station)
        })
    }

    fn described(&self, scale: Scale, level: Level) -> String {
        let [left, right] = self.lower.map(|lower| scale.write(lower));
        let ground = match level {
            Level::Hard => {
                format!("lower by {left} at the left face and by {right} at the right one")
            }
            _ => format!("lower by {right}"),
        };
        let width = match level {
            Level::Easy => String::new(),
            _ => format!(
                " and {} wide under the cope; both faces have a batter of 1 in {}",
                scale.write(self.wall.top),
                self.wall.one_in
            ),
        };
        format!(
            "The top of a wall is level. At its start it is {} high{width}. {} along it, the \
             ground is {ground} than at the start.",
            scale.write(self.wall.height),
            scale.write(self.station)
        )
    }
}

/// Level 1 asks for the rise, level 2 for rise and offset, level 3 for those of both bars on
/// ground that falls across the wall as well.
pub(super) fn marks(draw: &mut Draw, scale: Scale, level: Level) -> Option<Question> {
    marks_of(&Frame::draw(draw, scale, level)?, scale, level)
}

fn marks_of(frame: &Frame, scale: Scale, level: Level) -> Option<Question> {
    let standing = frame.standing()?;
    let rise = |side| standing.rise(side, frame.station);
    let offset = |side| standing.offset(side, frame.station);
    let both = |side| {
        format!(
            "rise {}, offset {}",
            scale.write(rise(side)),
            scale.write(offset(side))
        )
    };
    let working = |side: Side, lower| {
        let (high, lower) = (scale.in_sum(frame.wall.height), scale.in_sum(lower));
        let rise = format!("Rise = {high} + {lower} = {}", scale.total(rise(side)));
        let offset = format!(
            "Offset = top width ÷ 2 + rise ÷ {n} = {} ÷ 2 + {} ÷ {n} = {}",
            scale.in_sum(frame.wall.top),
            scale.in_sum(standing.rise(side, frame.station)),
            scale.total(offset(side)),
            n = frame.wall.one_in
        );
        [rise, offset]
    };
    let [left, right] = frame.lower;
    let question = "There, what is the rise (ground to the underside of the board, plumb)";
    let (asks, answer, lines) = match level {
        Level::Easy => (
            format!("{question}?"),
            format!("rise {}", scale.write(rise(Side::Right))),
            vec![
                "Rise = height at the start + how much lower the ground is".to_owned(),
                working(Side::Right, right)[0].clone(),
            ],
        ),
        Level::Usual => (
            format!("{question}, and the offset (centre line to the bar at the ground)?"),
            both(Side::Right),
            working(Side::Right, right).to_vec(),
        ),
        Level::Hard => (
            format!(
                "{question}, and the offset (centre line to the bar at the ground), of each bar?"
            ),
            format!("left: {}; right: {}", both(Side::Left), both(Side::Right)),
            [("Left", Side::Left, left), ("Right", Side::Right, right)]
                .into_iter()
                .flat_map(|(name, side, lower)| {
                    working(side, lower).map(|line| format!("{name}: {line}"))
                })
                .collect(),
        ),
    };
    let first = level.pick(Side::Right, Side::Right, Side::Left);
    Some(Question {
        ask: format!("{} {asks}", frame.described(scale, level)),
        working: lines.join("\n"),
        answer,
        tolerance: scale.tolerance(),
        value: rise(first).si(),
        ..Question::of(Kind::UnevenGround)
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Units;

    const METRES: Scale = Scale {
        units: Units::Metric,
    };

    fn frame(lower: [u32; 2]) -> Frame {
        Frame {
            wall: Wall {
                height: METRES.marks(105),
                top: METRES.marks(40),
                one_in: 6,
            },
            station: METRES.marks(600),
            lower: lower.map(|marks| METRES.marks(marks)),
        }
    }

    /// By hand: 1.05 + 0.15 = 1.20 m; 0.40/2 + 1.20/6 = 0.40 m.
    #[test]
    fn lower_ground_makes_a_higher_and_wider_frame() {
        let question = marks_of(&frame([15, 15]), METRES, Level::Usual).expect("sound");
        assert_eq!(question.answer, "rise 1.20 m, offset 0.40 m");
        assert_eq!(
            question.working,
            "Rise = 1.05 m + 0.15 m = 1.20 m\n\
             Offset = top width ÷ 2 + rise ÷ 6 = 0.40 m ÷ 2 + 1.20 m ÷ 6 = 0.40 m"
        );
        let easy = marks_of(&frame([15, 15]), METRES, Level::Easy).expect("sound");
        assert_eq!(easy.answer, "rise 1.20 m");
    }

    /// By hand: left 1.05 + 0.21 = 1.26 m and 0.20 + 0.21 = 0.41 m; right as above.
    #[test]
    fn ground_that_falls_across_gives_each_bar_its_own_marks() {
        let question = marks_of(&frame([21, 15]), METRES, Level::Hard).expect("sound");
        assert_eq!(
            question.answer,
            "left: rise 1.26 m, offset 0.41 m; right: rise 1.20 m, offset 0.40 m"
        );
        assert!((question.value - 1.26).abs() < 1e-9);
    }
}
