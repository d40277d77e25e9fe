//! The question of which frame is moved where, when there are fewer frames than stations.

use super::draw::Draw;
use super::scale::Scale;
use super::setting_out::{Frame, frames_given};
use super::{Kind, Level, Question};
use crate::frames::{Frames, LEAST_IN_USE, Move};
use crate::quantity::Length;
use crate::tables::{Bar, Tables};
use crate::wall::Wall as Standing;

/// A straight wall with too few frames.
#[derive(Debug, Clone, Copy)]
struct Short {
    bays: u32,
    spacing: Length,
    frames: u32,
}

impl Short {
    /// Neighbours differ in the number of bays.
    fn draw(draw: &mut Draw, scale: Scale, level: Level) -> Option<Self> {
        let bays =
            draw.pick_unlike_neighbours(&level.pick([4, 5, 6, 7], [5, 6, 7, 8], [7, 8, 9, 10]))?;
        let moves = level.pick(1..=4, 2..=4, 4..=6);
        let frames: Vec<u32> = (3..=5_u32)
            .filter(|frames| {
                LEAST_IN_USE <= *frames as usize && moves.contains(&(bays + 1 - frames))
            })
            .collect();
        let spacings = match level {
            Level::Easy => scale.either([200, 300].as_slice(), &[72, 96, 120]),
            Level::Usual => scale.either([150, 200, 250, 300].as_slice(), &[60, 72, 96, 120]),
            Level::Hard => scale.either([185, 215, 240, 275].as_slice(), &[66, 78, 90, 102]),
        };
        Some(Self {
            bays,
            spacing: scale.marks(draw.pick(spacings)?),
            frames: draw.pick(&frames)?,
        })
    }

    fn set_out(&self, scale: Scale, bars: &[Bar]) -> Option<Frames> {
        let frame = Frame::usual(scale);
        let mut given = frames_given(self.spacing, &frame, bars.first()?);
        given.in_stock = Some(self.frames);
        let length = self.spacing * f64::from(self.bays);
        let standing = Standing::plain(frame.wall.section().ok()?, length);
        Frames::set_out(&frame.wall.given().ok()?, &standing, &given, bars).ok()
    }
}

/// Level 1 asks about the first move, level 2 where each frame goes, level 3 also when.
pub(super) fn leapfrog(
    draw: &mut Draw,
    scale: Scale,
    tables: &Tables,
    level: Level,
) -> Option<Question> {
    moved(Short::draw(draw, scale, level)?, scale, &tables.bars, level)
}

fn moved(short: Short, scale: Scale, bars: &[Bar], level: Level) -> Option<Question> {
    let frames = short.set_out(scale, bars)?;
    let first = frames.moves.first()?;
    let answers: Vec<String> = match level {
        Level::Easy => vec![told(first, scale, true)],
        _ => frames
            .moves
            .iter()
            .map(|one| told(one, scale, level == Level::Hard))
            .collect(),
    };
    let end = frames.rows.last()?.station;
    Some(Question {
        ask: format!(
            "A straight wall is {} long and has a frame every {}, the first at its start. There \
             are only {} frames, numbered from the start; the hindmost goes ahead of the foremost \
             as soon as the bay in front of it is built. {}",
            scale.write(end),
            scale.write(short.spacing),
            short.frames,
            level.pick(
                "Which frame is moved first, how far from the start does it go, and how far must \
                 the wall stand before?",
                "Which frame is moved where? Write the moves in order, each place as a distance \
                 from the start.",
                "Which frame is moved where, and how far must the wall stand before each move? \
                 Write the moves in order, each place as a distance from the start."
            )
        ),
        working: working(&frames, short.frames, scale),
        answer: answers.join("; "),
        value: first.frame as f64,
        ..Question::of(Kind::Leapfrog)
    })
}

fn told(one: &Move, scale: Scale, when: bool) -> String {
    let place = format!("{} to {}", one.frame, scale.write(one.to));
    if when {
        format!("{place} once built to {}", scale.write(one.built_to))
    } else {
        place
    }
}

fn working(frames: &Frames, in_use: u32, scale: Scale) -> String {
    let at = |station: Length| scale.write(station);
    let standing: Vec<String> = frames
        .rows
        .iter()
        .take(in_use as usize)
        .map(|row| at(row.station))
        .collect();
    let mut lines = vec![format!(
        "At first the frames stand at {}",
        standing.join(", ")
    )];
    lines.extend(frames.moves.iter().map(|one| {
        format!(
            "Frame {}, from {}: {}",
            one.frame,
            at(one.from),
            told(one, scale, true)
        )
    }));
    lines.join("\n")
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Units;
    use crate::worksheet::sample;

    /// By hand: stations 0, 3, 6, 9, 12 m with 3 frames at 0, 3 and 6. The hindmost goes ahead
    /// of the foremost: frame 1 to 9 m once the bay from 0 to 3 m stands, frame 2 to 12 m once
    /// the wall stands to 6 m.
    #[test]
    fn the_hindmost_goes_ahead_of_the_foremost() {
        let scale = Scale::of(Units::Metric);
        let short = Short {
            bays: 4,
            spacing: scale.marks(300),
            frames: 3,
        };
        let bars = sample::tables().bars;
        let ask = |level| moved(short, scale, &bars, level).expect("sound");
        assert_eq!(ask(Level::Easy).answer, "1 to 9.00 m once built to 3.00 m");
        assert_eq!(ask(Level::Usual).answer, "1 to 9.00 m; 2 to 12.00 m");
        assert_eq!(
            ask(Level::Hard).answer,
            "1 to 9.00 m once built to 3.00 m; 2 to 12.00 m once built to 6.00 m"
        );
        assert!(
            ask(Level::Usual)
                .working
                .starts_with("At first the frames stand at 0.00 m, 3.00 m, 6.00 m\n")
        );
    }
}
