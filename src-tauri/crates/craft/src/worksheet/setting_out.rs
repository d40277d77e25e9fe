//! Questions about setting out: how many frames and bars, and how long a bar.

use super::draw::Draw;
use super::scale::{Scale, number, rounded};
use super::wall::{Wall, heights};
use super::{Kind, Question};
use crate::course::{CurveSpacing, FrameKind, FramesGiven};
use crate::frames::{Bars, Frames};
use crate::quantity::{Length, Read, metres};
use crate::tables::{Bar, Tables};
use crate::wall::{Side, Wall as Standing};

/// A bar this close to a length that is sold would be a question of rounding.
pub(super) const CLEAR_OF_STOCK_M: f64 = 0.03;

/// The n of the batters whose bars are asked about. At 1 in 8 and steeper the lean adds
/// less to a bar than the answer may be off, and the question would lose its point.
const LEANING: [u32; 2] = [5, 6];

/// Frames as a question gives them. Any bar will do: its size has no say in an answer.
pub(super) fn frames_given(spacing: Length, frame: &Frame, bar: &Bar) -> FramesGiven {
    FramesGiven {
        kind: FrameKind::Bar,
        in_stock: None,
        set_size: 1,
        leapfrog: false,
        spacing,
        curve: CurveSpacing::AtMost(spacing),
        tolerance: metres(0.025),
        lumber_lengths: Vec::new(),
        bar: bar.key.clone(),
        stock_lengths: frame.stock.clone(),
        embedment: frame.in_ground,
        projection: frame.above,
    }
}

fn set_out(frame: &Frame, length: Length, spacing: Length, bars: &[Bar]) -> Option<Frames> {
    let standing = Standing::plain(frame.wall.section().ok()?, length);
    let given = frames_given(spacing, frame, bars.first()?);
    Frames::set_out(&frame.wall.given().ok()?, &standing, &given, bars).ok()
}

/// A straight wall to be set out.
#[derive(Debug, Clone, Copy)]
pub(super) struct Line {
    pub(super) length: Length,
    pub(super) spacing: Length,
}

impl Line {
    /// Neighbours differ in the number of bays, and so in the answer.
    pub(super) fn draw(draw: &mut Draw, scale: Scale) -> Option<Self> {
        let bays = draw.pick_unlike_neighbours(&[2, 3, 4, 5, 6, 7])?;
        let usual = scale.either(400..=1200, 144..=480);
        let mut lines = Vec::new();
        for spacing in scale.either([150, 200, 250, 300], [60, 72, 96, 120]) {
            for short in scale.either([0, 50, 100], [0, 12, 24]) {
                let length = bays * spacing - short;
                if usual.contains(&length) {
                    lines.push(Self {
                        length: scale.marks(length),
                        spacing: scale.marks(spacing),
                    });
                }
            }
        }
        draw.pick(&lines)
    }
}

/// A student's own frames and bars.
pub(super) fn ask_frames_and_bars(
    draw: &mut Draw,
    scale: Scale,
    tables: &Tables,
) -> Option<Question> {
    frames_and_bars(Line::draw(draw, scale)?, scale, &tables.bars)
}

/// A student's own bar.
pub(super) fn ask_bar_length(draw: &mut Draw, scale: Scale, tables: &Tables) -> Option<Question> {
    bar_length(
        &Frame::draw(draw, scale, &tables.bars)?,
        scale,
        &tables.bars,
    )
}

/// Frames along a wall, and their bars.
pub(super) fn frames_and_bars(line: Line, scale: Scale, bars: &[Bar]) -> Option<Question> {
    // The height of the wall has no say in how many there are.
    let frame = Frame::usual(scale);
    let frames = set_out(&frame, line.length, line.spacing, bars)?;
    let (count, bars) = (frames.rows.len(), frames.bars?);
    Some(Question {
        ask: format!(
            "A straight wall is {} long. There is a frame at each end, and from one frame \
             to the next it is never more than {}. How many frames are there, and how many \
             bars?",
            scale.write(line.length),
            scale.write(line.spacing)
        ),
        working: format!(
            "Bays = length ÷ greatest spacing, rounded up\n= {} ÷ {} = {}\n\
             Frames = bays + 1 = {count}\nBars = 2 × frames = {}",
            scale.write(line.length),
            scale.write(line.spacing),
            rounded(
                line.length.si() / line.spacing.si(),
                count.saturating_sub(1)
            ),
            bars.count
        ),
        answer: format!("{count} frames, {} bars", bars.count),
        tolerance: "exact".to_owned(),
        value: count as f64,
        ..Question::of(Kind::FramesAndBars)
    })
}

/// A frame, and the lengths its bars are sold in.
#[derive(Debug, Clone)]
pub(super) struct Frame {
    pub(super) wall: Wall,
    pub(super) in_ground: Length,
    pub(super) above: Length,
    pub(super) stock: Vec<Length>,
}

impl Frame {
    pub(super) fn usual(scale: Scale) -> Self {
        Self {
            wall: Wall {
                height: scale.marks(scale.either(105, 42)),
                top: scale.marks(scale.either(40, 16)),
                one_in: 6,
            },
            in_ground: scale.marks(scale.either(45, 18)),
            above: scale.marks(scale.either(15, 6)),
            stock: scale
                .either([150, 180, 240], [60, 72, 96])
                .map(|stock| scale.marks(stock))
                .to_vec(),
        }
    }

    /// A frame whose bar is clear of every length that is sold. Neighbours differ in
    /// height.
    pub(super) fn draw(draw: &mut Draw, scale: Scale, bars: &[Bar]) -> Option<Self> {
        let usual = Self::usual(scale);
        let height = scale.marks(draw.pick_unlike_neighbours(&heights(scale))?);
        let mut frames = Vec::new();
        for one_in in LEANING {
            for in_ground in scale.either([45, 50, 60], [18, 20, 24]) {
                for above in scale.either([10, 15], [4, 6]) {
                    let frame = Self {
                        wall: Wall {
                            height,
                            one_in,
                            ..usual.wall
                        },
                        in_ground: scale.marks(in_ground),
                        above: scale.marks(above),
                        stock: usual.stock.clone(),
                    };
                    if frame.is_clear(bars) {
                        frames.push(frame);
                    }
                }
            }
        }
        let places: Vec<usize> = (0..frames.len()).collect();
        let at = draw.pick(&places)?;
        frames.get(at).cloned()
    }

    /// The bars of one frame of it.
    fn bars(&self, bars: &[Bar]) -> Option<Bars> {
        set_out(self, metres(1.0), metres(1.0), bars)?.bars
    }

    fn is_clear(&self, bars: &[Bar]) -> bool {
        self.bars(bars).is_some_and(|bars| {
            bars.chosen.is_some()
                && self
                    .stock
                    .iter()
                    .all(|stock| CLEAR_OF_STOCK_M < (*stock - bars.needed).si().abs())
        })
    }
}

/// The bar that is long enough.
pub(super) fn bar_length(frame: &Frame, scale: Scale, bars: &[Bar]) -> Option<Question> {
    let Bars { needed, chosen, .. } = frame.bars(bars)?;
    let chosen = chosen?;
    let slope = frame.wall.section().ok()?.batter(Side::Left).slope_factor();
    let sold: Vec<String> = frame
        .stock
        .iter()
        .map(|&stock| scale.write(stock))
        .collect();
    Some(Question {
        ask: format!(
            "The board of a frame is {} above the ground, measured plumb, and the bars lean \
             at 1 in {}. Along the bar, {} goes into the ground and {} stands out above the \
             board. How long must a bar be at least? Bars are sold {} long: which do you \
             take?",
            scale.write(frame.wall.height),
            frame.wall.one_in,
            scale.write(frame.in_ground),
            scale.write(frame.above),
            or(&sold)
        ),
        working: format!(
            "Ground to board along the bar = height × √(1 + 1 ÷ {n}²)\n\
             = {height} × {slope} = {along}\n\
             Bar = that + in the ground + above the board\n= {along} + {} + {}\n= {}\n\
             The shortest that is long enough: {}",
            scale.in_sum(frame.in_ground),
            scale.in_sum(frame.above),
            scale.total(needed),
            scale.write(chosen),
            n = frame.wall.one_in,
            height = scale.in_sum(frame.wall.height),
            slope = number(slope, 4),
            along = scale.in_sum(needed - frame.in_ground - frame.above),
        ),
        answer: format!("{}; take {}", scale.write(needed), scale.write(chosen)),
        tolerance: format!("{}; exact which bar", scale.tolerance()),
        value: needed.si(),
        ..Question::of(Kind::BarLength)
    })
}

/// `5 ft, 6 ft or 8 ft`.
pub(super) fn or(words: &[String]) -> String {
    match words {
        [before @ .., last] if !before.is_empty() => format!("{} or {last}", before.join(", ")),
        _ => words.concat(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{INCH_M, Units};
    use crate::worksheet::sample;

    const INCHES: Scale = Scale {
        units: Units::Imperial,
    };
    const METRES: Scale = Scale {
        units: Units::Metric,
    };

    /// By hand: 9.5/3 is more than 3, so 4 bays, 5 frames, 10 bars; 9/3 is 3 bays, 4
    /// frames, 8 bars.
    #[test]
    fn frames_are_one_more_than_bays_and_bars_twice_as_many() {
        let bars = sample::tables().bars;
        for (length, answer, value) in [
            (950, "5 frames, 10 bars", 5.0),
            (900, "4 frames, 8 bars", 4.0),
        ] {
            let line = Line {
                length: METRES.marks(length),
                spacing: METRES.marks(300),
            };
            let question = frames_and_bars(line, METRES, &bars).expect("a bar there is");
            assert_eq!(question.answer, answer);
            assert!((question.value - value).abs() < 1e-9);
        }
    }

    #[test]
    fn frames_are_asked_about_in_plain_words() {
        let bars = sample::tables().bars;
        let line = Line {
            length: INCHES.marks(29 * 12),
            spacing: INCHES.marks(120),
        };
        let question = frames_and_bars(line, INCHES, &bars).expect("a bar there is");
        assert_eq!(
            question.ask,
            "A straight wall is 29 ft long. There is a frame at each end, and from one frame \
             to the next it is never more than 10 ft. How many frames are there, and how many \
             bars?"
        );
        assert_eq!(
            question.working,
            "Bays = length ÷ greatest spacing, rounded up\n= 29 ft ÷ 10 ft = 2.9, so 3\n\
             Frames = bays + 1 = 4\nBars = 2 × frames = 8"
        );
    }

    /// By hand: √(37/36) = 1.01379; 42 · 1.01379 + 18 + 6 = 66.58 in, which is 5 ft 6 5/8 in
    /// to the nearest eighth; 5 ft is too short, so 6 ft.
    #[test]
    fn a_bar_is_measured_along_its_lean() {
        let bars = sample::tables().bars;
        let frame = Frame::usual(INCHES);
        let question = bar_length(&frame, INCHES, &bars).expect("a bar there is");
        assert_eq!(
            question.ask,
            "The board of a frame is 3 ft 6 in above the ground, measured plumb, and the bars \
             lean at 1 in 6. Along the bar, 1 ft 6 in goes into the ground and 6 in stands out \
             above the board. How long must a bar be at least? Bars are sold 5 ft, 6 ft or \
             8 ft long: which do you take?"
        );
        assert_eq!(
            question.working,
            "Ground to board along the bar = height × √(1 + 1 ÷ 6²)\n\
             = 42 in × 1.0138 = 42.58 in\n\
             Bar = that + in the ground + above the board\n= 42.58 in + 18 in + 6 in\n\
             = 66.58 in, on the tape 5 ft 6 5/8 in\n\
             The shortest that is long enough: 6 ft"
        );
        assert_eq!(question.answer, "5 ft 6 5/8 in; take 6 ft");
        assert_eq!(question.tolerance, "within 1/4 in (6 mm); exact which bar");
        assert!((question.value - 66.579 * INCH_M).abs() < 1e-4);
    }

    /// Else whoever forgets the lean is right as well, or whoever rounds takes another bar.
    #[test]
    fn the_lean_matters_and_rounding_does_not() {
        let bars = sample::tables().bars;
        for (scale, tolerance) in [(METRES, 0.01), (INCHES, INCH_M / 4.0)] {
            for student in 0..200 {
                let mut draw = Draw::new(2, student, Kind::BarLength);
                let frame = Frame::draw(&mut draw, scale, &bars).expect("lists are not empty");
                let plumb = frame.wall.height + frame.in_ground + frame.above;
                let question = bar_length(&frame, scale, &bars).expect("a bar there is");
                assert!(tolerance < question.value - plumb.si(), "{}", question.ask);
                for stock in &frame.stock {
                    let clear = (stock.si() - question.value).abs();
                    assert!(2.0 * tolerance < clear, "{}", question.ask);
                }
            }
        }
    }

    #[test]
    fn without_bars_there_is_no_question() {
        assert_eq!(bar_length(&Frame::usual(METRES), METRES, &[]), None);
    }
}
