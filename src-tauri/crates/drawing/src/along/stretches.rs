//! Long walls in stretches, drawn one below another so that their figures can be read.

use crate::paper::fitting::{TooLarge, at_largest_scale, in_least_room, sound};
use crate::paper::scale::Scale;
use crate::paper::scene::Room;
use crate::paper::sheet::Sheet;
use craft::frames::FrameRow;
use craft::plan::Plan;
use craft::quantity::{Length, Read, metres};

/// Bays narrower than this on paper leave no room for what is written at the frames.
const ROOMY_BAY_MM: f64 = 15.0;
/// More stretches than this are no drawing of one wall any more.
const MOST: usize = 4;
/// A stretch on a sheet of its own is drawn at least so long: its words need the rest.
const LEAST_APART_MM: f64 = 24.0;
/// Nor more than this, where each has a sheet of its own.
const MOST_APART: usize = 12;
/// A wall is drawn at least so long.
const LEAST_LENGTH_MM: f64 = 45.0;

/// A stretch of wall from one frame to another.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Stretch<'a> {
    /// Its frames. Where a ring closes, the frame it ends at is not among them: it is the
    /// first of the wall.
    pub(crate) rows: &'a [FrameRow],
    /// How many frames stand before the first of them.
    pub(crate) before: usize,
    /// Begins at station 0.
    pub(crate) first: bool,
    /// Ends at the far end, or where a ring comes back to station 0.
    pub(crate) last: bool,
    /// Where it ends.
    end: Length,
}

impl Stretch<'_> {
    pub(crate) fn from(&self) -> Length {
        self.rows.first().map_or(metres(0.0), |row| row.station)
    }

    pub(crate) fn to(&self) -> Length {
        self.end
    }
}

/// The wall in `count` stretches with as nearly as possible the same number of bays. A frame
/// where two stretches meet belongs to both.
pub(crate) fn stretches(plan: &Plan, count: usize) -> Vec<Stretch<'_>> {
    let (rows, bays) = (&plan.frames.rows, &plan.frames.bays);
    let count = count.clamp(1, bays.len().max(1));
    (0..count)
        .filter_map(|at| {
            let (from, to) = (at * bays.len() / count, (at + 1) * bays.len() / count);
            Some(Stretch {
                rows: rows.get(from..=to.min(rows.len().saturating_sub(1)))?,
                before: from,
                first: at == 0,
                last: at + 1 == count,
                end: bays.get(to.checked_sub(1)?)?.to,
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
    let (fitted, sheet) = laid_out(plan, room, draw);
    (fitted.scale, sheet, fitted.room)
}

/// What a drawing in stretches was found to fit.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Fitted {
    pub(crate) scale: Scale,
    pub(crate) room: Room,
    /// How many stretches.
    pub(crate) count: usize,
}

/// The same, with what it was found to fit. Where words leave no room for the wall, however it
/// is cut, the room grows in its own proportions.
pub(crate) fn laid_out(
    plan: &Plan,
    room: Room,
    draw: impl Fn(Scale, Room, &[Stretch<'_>]) -> Sheet,
) -> (Fitted, Sheet) {
    in_least_room(room, |room| laid_within(plan, room, &draw)).map_or_else(
        |room| {
            let (scale, count) = (Scale::SMALLEST, 1);
            let sheet = draw(scale, room, &stretches(plan, count));
            (Fitted { scale, room, count }, sheet)
        },
        |(found, _)| found,
    )
}

/// The drawing in the fewest stretches that leave roomy bays in this room, or in those that
/// allow the largest scale.
fn laid_within(
    plan: &Plan,
    room: Room,
    draw: impl Fn(Scale, Room, &[Stretch<'_>]) -> Sheet,
) -> Result<(Fitted, Sheet), TooLarge> {
    let mut best: Option<(Fitted, Sheet)> = None;
    let mut least = TooLarge::UNKNOWN;
    for count in 1..=MOST.min(plan.frames.rows.len()) {
        let parts = stretches(plan, count);
        let longest = longest(&parts);
        let legible = |scale: Scale| LEAST_LENGTH_MM < scale.mm(longest);
        let found = at_largest_scale(room, legible, |scale, room| draw(scale, room, &parts));
        let (scale, sheet) = match found {
            Ok(found) => found,
            Err(too_large) => {
                least = least.or(too_large);
                continue;
            }
        };
        let fitted = Fitted { scale, room, count };
        if ROOMY_BAY_MM <= scale.mm(narrowest_bay(plan)) {
            return Ok((fitted, sheet));
        }
        if best
            .as_ref()
            .is_none_or(|(least, _)| scale.n() < least.scale.n())
        {
            best = Some((fitted, sheet));
        }
    }
    best.ok_or(least)
}

/// A drawing made in as many stretches as it takes for each to fit the room by itself, on a sheet
/// of its own; the fewest, at the largest scale that leaves them legible.
pub(crate) fn each_by_itself(
    plan: &Plan,
    room: Room,
    draw: impl Fn(Scale, Room, &[Stretch<'_>]) -> Sheet,
) -> Option<(Scale, Vec<Sheet>)> {
    let room = sound(room);
    (2..=MOST_APART.min(plan.frames.bays.len())).find_map(|count| {
        let parts = stretches(plan, count);
        let longest = longest(&parts);
        let legible = |scale: &Scale| LEAST_APART_MM < scale.mm(longest);
        Scale::all().take_while(legible).find_map(|scale| {
            let one = |part: &Stretch<'_>| {
                let sheet = draw(scale, room, std::slice::from_ref(part));
                sheet.fits(room).then_some(sheet)
            };
            let sheets: Option<Vec<Sheet>> = parts.iter().map(one).collect();
            Some((scale, sheets?))
        })
    })
}

/// What of a wall one of `count` sheets shows, in words, from the second on.
pub(crate) fn told_with_the_first(name: &str, at: usize, count: usize) -> String {
    format!(
        "Part {} of {count} of {name}, told in words with the first part.",
        at + 1
    )
}

fn longest(parts: &[Stretch<'_>]) -> Length {
    let lengths = parts.iter().map(|part| (part.to() - part.from()).si());
    metres(lengths.fold(0.0, f64::max))
}

fn narrowest_bay(plan: &Plan) -> Length {
    let bays = plan.frames.bays.iter().map(|bay| bay.length.si());
    metres(bays.fold(f64::INFINITY, f64::min))
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
