//! Finding the scale and the room that a drawing fits: the largest scale in the room that is given,
//! else the least room grown from it.

use crate::paper::scale::Scale;
use crate::paper::scene::Room;
use crate::paper::sheet::Sheet;

/// How much larger the next room tried is.
const GROWTH: f64 = 1.02;
/// A room beyond which no drawing needs to grow: the end of the search, not a size in use.
const LARGEST_ROOM_MM: f64 = 3000.0;
/// So often the smallest room grows until it is the largest, by reckoning 198 times.
const MOST_STEPS: u8 = 200;
/// A room below which no drawing is tried.
const SMALLEST_ROOM_MM: f64 = 60.0;

/// At half the scale a drawing is at least half as large, because its words stay as they are; but
/// where they find better places than before, less than that by so many times at most. A guess: were
/// it too low, a drawing would come out at a smaller scale than it could.
const ARRANGED_BETTER: f64 = 2.0;

/// By how many times what was drawn is too large for its room.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub(crate) struct TooLarge(f64);

impl TooLarge {
    /// Nothing was drawn that could be measured.
    pub(crate) const UNKNOWN: Self = Self(f64::INFINITY);

    /// The lesser of two.
    pub(crate) fn or(self, other: Self) -> Self {
        if other < self { other } else { self }
    }

    /// So many times it has to grow, at least once, to make up for it; nothing where no such
    /// number is known.
    fn steps(self) -> Option<usize> {
        let steps = (self.0.ln() / GROWTH.ln()).ceil();
        (1..=MOST_STEPS)
            .find(|at| steps <= f64::from(*at))
            .map(usize::from)
    }
}

/// A sheet in its room, if it fits.
fn fitting(sheet: Sheet, room: Room) -> Result<Sheet, TooLarge> {
    let times = sheet.times(room);
    if times <= 1.0 {
        Ok(sheet)
    } else {
        Err(TooLarge(times))
    }
}

/// The drawing at the largest round scale that fits the room, if one does while the wall is
/// still `legible`. Scales at which it is far too large, by what it was at a larger one, are passed
/// over.
pub(crate) fn at_largest_scale(
    room: Room,
    legible: impl Fn(Scale) -> bool,
    draw: impl Fn(Scale, Room) -> Sheet,
) -> Result<(Scale, Sheet), TooLarge> {
    let mut least = TooLarge::UNKNOWN;
    let mut hopeless_before = 0.0;
    for scale in Scale::all().take_while(|scale| legible(*scale)) {
        let n = f64::from(scale.n());
        if n < hopeless_before {
            continue;
        }
        match fitting(draw(scale, room), room) {
            Ok(sheet) => return Ok((scale, sheet)),
            Err(too_large) => {
                hopeless_before = n * too_large.0 / ARRANGED_BETTER;
                least = least.or(too_large);
            }
        }
    }
    Err(least)
}

/// The drawing at the largest round scale that fits the room. Where texts alone are too
/// much for the room, or the wall would be smaller than `legible` allows, the room grows in
/// its own proportions until it is large enough.
pub(crate) fn fitted(
    room: Room,
    legible: impl Fn(Scale) -> bool,
    draw: impl Fn(Scale, Room) -> Sheet,
) -> (Scale, Sheet, Room) {
    let found = in_least_room(room, |room| at_largest_scale(room, &legible, &draw));
    match found {
        Ok(((scale, sheet), room)) => (scale, sheet, room),
        Err(room) => (Scale::SMALLEST, draw(Scale::SMALLEST, room), room),
    }
}

/// The same for a picture without a scale, drawn for a room.
pub(crate) fn fitted_chart(room: Room, draw: impl Fn(Room) -> Sheet) -> (Sheet, Room) {
    match in_least_room(room, |room| fitting(draw(room), room)) {
        Ok(found) => found,
        Err(room) => (draw(room), room),
    }
}

/// What is made in the least room that it fits, grown from this one in its own proportions; the
/// largest room there is where it fits none. What fits a room is taken to fit a larger one too, so
/// not every room between has to be tried.
pub(crate) fn in_least_room<T>(
    room: Room,
    make: impl Fn(Room) -> Result<T, TooLarge>,
) -> Result<(T, Room), Room> {
    let rooms = growing(sound(room));
    let mut least: Option<(usize, T)> = None;
    // All rooms before this one are too small.
    let mut from = 0;
    let mut at = 0;
    while from < least.as_ref().map_or(rooms.len(), |(fits, _)| *fits) {
        match make(rooms[at]) {
            Ok(made) => {
                // As a rule it was guessed right, and the room before is too small.
                let guessed = least.is_none();
                least = Some((at, made));
                at = if guessed {
                    at.saturating_sub(1)
                } else {
                    usize::midpoint(from, at)
                };
            }
            Err(too_large) => {
                from = at + 1;
                at = match &least {
                    Some((fits, _)) => usize::midpoint(from, *fits),
                    None => (at + too_large.steps().unwrap_or(from)).min(rooms.len() - 1),
                };
            }
        }
    }
    let last = rooms[rooms.len() - 1];
    least.map_or(Err(last), |(fits, made)| Ok((made, rooms[fits])))
}

/// The rooms to try, each larger than the one before; at least one.
fn growing(room: Room) -> Vec<Room> {
    let larger = |room: &Room| {
        let grown = Room {
            width_mm: room.width_mm * GROWTH,
            height_mm: room.height_mm * GROWTH,
        };
        (room.width_mm <= LARGEST_ROOM_MM).then_some(grown)
    };
    std::iter::successors(Some(room), larger).collect()
}

/// A room with sides a drawing can be made in.
pub(crate) fn sound(room: Room) -> Room {
    let side = |given: f64| {
        if given.is_finite() {
            given.clamp(SMALLEST_ROOM_MM, LARGEST_ROOM_MM)
        } else {
            SMALLEST_ROOM_MM
        }
    };
    Room {
        width_mm: side(room.width_mm),
        height_mm: side(room.height_mm),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::paper::pen::Pen;
    use crate::paper::scene::Point;
    use std::cell::Cell;

    const ROOM: Room = Room {
        width_mm: 100.0,
        height_mm: 80.0,
    };

    fn square(side_mm: f64) -> Sheet {
        let mut sheet = Sheet::default();
        sheet.line(
            Pen::Dimension,
            Point::new(0.0, 0.0),
            Point::new(side_mm, side_mm),
        );
        sheet
    }

    /// Against every room tried in turn.
    #[test]
    fn the_least_room_is_found_without_trying_all() {
        for step in 0..60 {
            let side_mm = 70.0 + 5.0 * f64::from(step);
            // In a wider room words take fewer lines, so what is drawn is not so high.
            let high = |room: Room| side_mm + (2000.0 / room.width_mm).floor();
            let tried = Cell::new(0);
            let found = in_least_room(ROOM, |room| {
                tried.set(tried.get() + 1);
                fitting(square(high(room)), room)
            });
            let (_, room) = found.expect("it fits a large room");
            let all = growing(ROOM);
            let least = all.iter().find(|room| square(high(**room)).fits(**room));
            assert_eq!(Some(&room), least, "{side_mm}");
            assert!(tried.get() <= 10, "{} for {side_mm}", tried.get());
        }
    }

    #[test]
    fn what_fits_no_room_is_told_the_largest() {
        let never = in_least_room(ROOM, |_| Err::<(), _>(TooLarge::UNKNOWN));
        let largest = never.expect_err("it fits none");
        assert!(LARGEST_ROOM_MM < largest.width_mm);
        let (scale, _, room) = fitted(ROOM, |_| true, |_, _| square(10_000.0));
        assert_eq!((scale, room), (Scale::SMALLEST, largest));
    }
}
