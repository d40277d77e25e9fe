//! Long walls in stretches, drawn one below another so that their figures can be read.

use crate::scale::Scale;
use crate::scene::Room;
use crate::sheet::{Sheet, at_largest_scale, fitted, sound};
use craft::frames::FrameRow;
use craft::plan::Plan;
use craft::quantity::{Length, Read, metres};

/// Bays narrower than this on paper leave no room for what is written at the frames.
const ROOMY_BAY_MM: f64 = 15.0;
/// More stretches than this are no drawing of one wall any more.
const MOST: usize = 4;
/// A wall is drawn at least so long.
const LEAST_LENGTH_MM: f64 = 45.0;

/// A stretch of wall from one frame to another.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Stretch<'a> {
    /// Its frames.
    pub(crate) rows: &'a [FrameRow],
    /// How many frames stand before the first of them.
    pub(crate) before: usize,
    /// Begins at station 0.
    pub(crate) first: bool,
    /// Ends at the far end.
    pub(crate) last: bool,
}

impl Stretch<'_> {
    pub(crate) fn from(&self) -> Length {
        self.rows.first().map_or(metres(0.0), |row| row.station)
    }

    pub(crate) fn to(&self) -> Length {
        self.rows.last().map_or(metres(0.0), |row| row.station)
    }
}

/// The wall in `count` stretches with as nearly as possible the same number of bays. A frame
/// where two stretches meet belongs to both.
pub(crate) fn stretches(plan: &Plan, count: usize) -> Vec<Stretch<'_>> {
    let rows = &plan.frames.rows;
    let bays = rows.len().saturating_sub(1).max(1);
    let count = count.clamp(1, bays);
    (0..count)
        .filter_map(|at| {
            let (from, to) = (at * bays / count, (at + 1) * bays / count);
            Some(Stretch {
                rows: rows.get(from..=to.min(rows.len().saturating_sub(1)))?,
                before: from,
                first: at == 0,
                last: at + 1 == count,
            })
        })
        .collect()
}

/// A drawing made in stretches: the fewest that leave roomy bays, or those that allow the
/// largest scale.
pub(crate) fn fitted_in_stretches(
    plan: &Plan,
    room: Room,
    draw: impl Fn(Scale, Room, &[Stretch<'_>]) -> Sheet,
) -> (Scale, Sheet, Room) {
    let room = sound(room);
    let mut best: Option<(Scale, Sheet)> = None;
    for count in 1..=MOST.min(plan.frames.rows.len()) {
        let parts = stretches(plan, count);
        let longest = longest(&parts);
        let legible = |scale: Scale| LEAST_LENGTH_MM < scale.mm(longest);
        let found = at_largest_scale(room, legible, |scale, room| draw(scale, room, &parts));
        let Some((scale, sheet)) = found else {
            continue;
        };
        if ROOMY_BAY_MM <= scale.mm(narrowest_bay(plan)) {
            return (scale, sheet, room);
        }
        if best.as_ref().is_none_or(|(least, _)| scale.n() < least.n()) {
            best = Some((scale, sheet));
        }
    }
    best.map_or_else(
        || {
            let parts = stretches(plan, 1);
            let legible = |scale: Scale| LEAST_LENGTH_MM < scale.mm(longest(&parts));
            fitted(room, legible, |scale, room| draw(scale, room, &parts))
        },
        |(scale, sheet)| (scale, sheet, room),
    )
}

fn longest(parts: &[Stretch<'_>]) -> Length {
    let lengths = parts.iter().map(|part| (part.to() - part.from()).si());
    metres(lengths.fold(0.0, f64::max))
}

fn narrowest_bay(plan: &Plan) -> Length {
    let bays = plan.frames.rows.windows(2);
    let least = bays
        .map(|pair| (pair[1].station - pair[0].station).si())
        .fold(f64::INFINITY, f64::min);
    metres(least)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fixture;

    #[test]
    fn stretches_cover_the_wall_and_share_the_frames_they_meet_at() {
        for (name, course) in fixture::courses() {
            let plan = fixture::plan(&course);
            for count in 1..=4 {
                let parts = stretches(&plan, count);
                assert!(parts[0].first && parts[0].from() == metres(0.0), "{name}");
                let last = parts[parts.len() - 1];
                assert!(last.last && last.to() == plan.sizing.length, "{name}");
                for pair in parts.windows(2) {
                    assert!(pair[0].to() == pair[1].from(), "{name}");
                    assert_eq!(pair[0].before + pair[0].rows.len() - 1, pair[1].before);
                }
            }
        }
    }
}
