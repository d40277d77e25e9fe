//! Frames along a line that bends, and the bars of a frame on ground that falls across it.

use super::super::draw::Draw;
use super::super::scale::{Scale, number, rounded};
use super::super::setting_out::{CLEAR_OF_STOCK_M, Frame, frames_given, or};
use super::super::wall::heights;
use super::super::{Kind, Question};
use crate::course::CurveSpacing;
use crate::frames::{Bars, Frames};
use crate::quantity::{Length, Read, metres};
use crate::tables::{Bar, Tables};
use crate::wall::{Bend, Ground, Line, Side, Stretch, Survey, Wall as Standing};

/// The n of the batters whose bars are asked about, as at level 2.
const LEANING: [u32; 2] = [5, 6];

/// A line that goes straight and then bends.
#[derive(Debug, Clone, Copy)]
struct Bent {
    straight: Length,
    arc: Length,
    /// The most between frames on the straight and on the arc.
    spacing: [Length; 2],
}

impl Bent {
    /// Neighbours differ in the bays of the straight.
    fn draw(draw: &mut Draw, scale: Scale) -> Option<Self> {
        let bays = draw.pick_unlike_neighbours(&[2, 3, 4, 5])?;
        let on_arc = draw.pick(&[2, 3, 4])?;
        let spacing = draw.pick(&scale.either([210, 240, 270], [78, 90, 102]))?;
        let close = draw.pick(&scale.either([110, 130, 150], [42, 48, 54]))?;
        let short = draw.pick(&scale.either([30, 50, 70], [10, 14, 22]))?;
        Some(Self {
            straight: scale.marks(bays * spacing - short),
            arc: scale.marks(on_arc * close - short),
            spacing: [scale.marks(spacing), scale.marks(close)],
        })
    }

    /// The frames, and how many bays there are on the straight and on the arc.
    fn frames(&self, scale: Scale, bars: &[Bar]) -> Option<(Frames, [usize; 2])> {
        let frame = Frame::usual(scale);
        let radius = scale.marks(scale.either(600, 240));
        let bend = Some(Bend {
            radius,
            turn: Side::Left,
        });
        let stretches = [
            Stretch {
                length: self.straight,
                bend: None,
            },
            Stretch {
                length: self.arc,
                bend,
            },
        ];
        let length = self.straight + self.arc;
        let standing = Standing {
            line: Line::of_length(&stretches, length),
            ..Standing::plain(frame.wall.section().ok()?, length)
        };
        let [spacing, close] = self.spacing;
        let mut given = frames_given(spacing, &frame, bars.first()?);
        given.curve = CurveSpacing::AtMost(close);
        let frames = Frames::set_out(&frame.wall.given().ok()?, &standing, &given, bars).ok()?;
        let on_arc = frames.bays.iter().filter(|bay| bay.bend.is_some()).count();
        let straight = frames.bays.len() - on_arc;
        Some((frames, [straight, on_arc]))
    }
}

/// Frames along a straight and a bend, and their bars.
pub(in super::super) fn frames_and_bars(
    draw: &mut Draw,
    scale: Scale,
    tables: &Tables,
) -> Option<Question> {
    along(Bent::draw(draw, scale)?, scale, &tables.bars)
}

fn along(line: Bent, scale: Scale, bars: &[Bar]) -> Option<Question> {
    let (frames, [straight, on_arc]) = line.frames(scale, bars)?;
    let (count, bars) = (frames.rows.len(), frames.bars?.count);
    let share = |length: Length, spacing: Length, bays| {
        format!(
            "{} ÷ {} = {}",
            scale.in_sum(length),
            scale.in_sum(spacing),
            rounded(length.si() / spacing.si(), bays)
        )
    };
    let [spacing, close] = line.spacing;
    Some(Question {
        ask: format!(
            "A wall runs straight for {}, then round a bend for {} more. There is a frame at \
             each end and one where the bend begins. From one frame to the next it is never more \
             than {} on the straight and {} on the bend. How many frames are there, and how many \
             bars?",
            scale.write(line.straight),
            scale.write(line.arc),
            scale.write(spacing),
            scale.write(close)
        ),
        working: format!(
            "Bays on the straight, rounded up = {}\nBays on the bend, rounded up = {}\n\
             Frames = bays + 1 = {straight} + {on_arc} + 1 = {count}\nBars = 2 × frames = {bars}",
            share(line.straight, spacing, straight),
            share(line.arc, close, on_arc)
        ),
        answer: format!("{count} frames, {bars} bars"),
        value: count as f64,
        ..Question::of(Kind::FramesAndBars)
    })
}

/// A frame on ground that falls across the wall.
#[derive(Debug, Clone)]
struct Across {
    frame: Frame,
    /// How far the ground is lower at the left face, and higher at the right one, than at the
    /// centre line.
    falls: [Length; 2],
}

impl Across {
    fn bars(&self, bars: &[Bar]) -> Option<(Frames, Bars)> {
        let [lower, higher] = self.falls;
        let level = metres(0.0);
        let standing = Standing {
            ground: Ground::new(vec![Survey {
                station: level,
                level,
                left: -lower,
                right: higher,
            }]),
            ..Standing::plain(self.frame.wall.section().ok()?, metres(1.0))
        };
        let given = frames_given(metres(1.0), &self.frame, bars.first()?);
        let wall = self.frame.wall.given().ok()?;
        let frames = Frames::set_out(&wall, &standing, &given, bars).ok()?;
        let bars = frames.bars.clone()?;
        Some((frames, bars))
    }

    fn is_clear(&self, bars: &[Bar]) -> bool {
        self.bars(bars).is_some_and(|(_, bars)| {
            let clear = |stock: &Length| CLEAR_OF_STOCK_M < (*stock - bars.needed).si().abs();
            bars.chosen.is_some() && self.frame.stock.iter().all(clear)
        })
    }
}

/// The bars of a frame on ground that falls across the wall. Neighbours differ in height.
pub(in super::super) fn bar_length(
    draw: &mut Draw,
    scale: Scale,
    tables: &Tables,
) -> Option<Question> {
    let usual = Frame::usual(scale);
    let height = scale.marks(draw.pick_unlike_neighbours(&heights(scale))?);
    let mut all = Vec::new();
    for one_in in LEANING {
        for in_ground in scale.either([43, 47, 53], [17, 19, 21]) {
            for lower in scale.either([7, 11, 13], [3, 4, 5]) {
                let mut frame = usual.clone();
                frame.wall.height = height;
                frame.wall.one_in = one_in;
                frame.in_ground = scale.marks(in_ground);
                frame.above = scale.marks(scale.either(13, 5));
                let higher = scale.marks(scale.either(6, 2));
                let across = Across {
                    frame,
                    falls: [scale.marks(lower), higher],
                };
                if across.is_clear(&tables.bars) {
                    all.push(across);
                }
            }
        }
    }
    let places: Vec<usize> = (0..all.len()).collect();
    longest(all.get(draw.pick(&places)?)?, scale, &tables.bars)
}

fn longest(across: &Across, scale: Scale, bars: &[Bar]) -> Option<Question> {
    let (frames, Bars { needed, chosen, .. }) = across.bars(bars)?;
    let (row, chosen, frame) = (frames.rows.first()?, chosen?, &across.frame);
    let section = frame.wall.section().ok()?;
    let slope = section.batter(Side::Left).slope_factor();
    let [lower, higher] = across.falls;
    let sold: Vec<String> = frame
        .stock
        .iter()
        .map(|&stock| scale.write(stock))
        .collect();
    Some(Question {
        ask: format!(
            "The board of a frame is level, {} above the ground at the centre line. At the left \
             bar the ground is {} lower, at the right bar {} higher. The bars lean at 1 in {}; \
             along the bar, {} goes into the ground and {} stands out above the board. All bars \
             are cut alike: how long must they be at least? Bars are sold {} long: which do you \
             take?",
            scale.write(frame.wall.height),
            scale.write(lower),
            scale.write(higher),
            frame.wall.one_in,
            scale.write(frame.in_ground),
            scale.write(frame.above),
            or(&sold)
        ),
        working: format!(
            "The left bar is the longer one: ground to board = {} + {} = {}\n\
             Along the bar = that × √(1 + 1 ÷ {n}²) = {} × {} = {}\n\
             Bar = that + in the ground + above the board\n= {} + {} + {}\n= {}\n\
             The shortest that is long enough: {}",
            scale.in_sum(frame.wall.height),
            scale.in_sum(lower),
            scale.in_sum(row.left_rise),
            scale.in_sum(row.left_rise),
            number(slope, 4),
            scale.in_sum(needed - frame.in_ground - frame.above),
            scale.in_sum(needed - frame.in_ground - frame.above),
            scale.in_sum(frame.in_ground),
            scale.in_sum(frame.above),
            scale.total(needed),
            scale.write(chosen),
            n = frame.wall.one_in
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

    const METRES: Scale = Scale {
        units: Units::Metric,
    };

    /// By hand: 7.60/2.70 = 2.81, so 3; 3.40/1.30 = 2.62, so 3; 3 + 3 + 1 = 7 frames.
    #[test]
    fn a_bend_has_bays_of_its_own() {
        let line = Bent {
            straight: METRES.marks(760),
            arc: METRES.marks(340),
            spacing: [METRES.marks(270), METRES.marks(130)],
        };
        let question = along(line, METRES, &sample::tables().bars).expect("sound");
        assert_eq!(question.answer, "7 frames, 14 bars");
        assert_eq!(
            question.working,
            "Bays on the straight, rounded up = 7.60 m ÷ 2.70 m = 2.81, so 3\n\
             Bays on the bend, rounded up = 3.40 m ÷ 1.30 m = 2.62, so 3\n\
             Frames = bays + 1 = 3 + 3 + 1 = 7\nBars = 2 × frames = 14"
        );
    }

    /// By hand: 1.05 + 0.11 = 1.16; 1.16 · √(37/36) = 1.1760; + 0.47 + 0.13 = 1.776 m.
    #[test]
    fn the_longer_bar_decides() {
        let mut frame = Frame::usual(METRES);
        frame.in_ground = METRES.marks(47);
        frame.above = METRES.marks(13);
        let across = Across {
            frame,
            falls: [METRES.marks(11), METRES.marks(6)],
        };
        let question = longest(&across, METRES, &sample::tables().bars).expect("sound");
        assert!((question.value - 1.776).abs() < 1e-4, "{}", question.value);
        assert_eq!(question.answer, "1.78 m; take 1.80 m");
    }
}
