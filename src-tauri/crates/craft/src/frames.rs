//! Setting out: where frames stand, the marks of each, bars, boards, strings and moves.

use crate::Error;
use crate::course::{End, FramesGiven, WallGiven};
use crate::quantity::{Length, Mass, Read, metres, steps_to_cover};
use crate::tables::Bar;
use crate::wall::{Section, Side};

/// The fewest frames in use when they leapfrog: two hold the string, one is moved.
pub const LEAST_IN_USE: usize = 3;

/// A string is moved up by no more than this (common practice, no source: 0.15 to 0.20 m).
const STRING_STEP_M: f64 = 0.20;

/// The whole setting-out.
#[derive(Debug, Clone, PartialEq)]
pub struct Frames {
    /// One row per frame, in order of station.
    pub rows: Vec<FrameRow>,
    /// Between neighbouring frames.
    pub bay: Length,
    /// Sets to bring.
    pub sets: usize,
    /// Frames that are missing, if they have been counted.
    pub short: Option<usize>,
    /// End profiles, one per head.
    pub end_profiles: usize,
    /// The bars.
    pub bars: Bars,
    /// The order of moves, when fewer frames are in stock than stations.
    pub moves: Vec<Move>,
    /// String heights from the ground up.
    pub strings: Vec<StringHeight>,
}

/// One frame: where it stands and its marks.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FrameRow {
    /// Along the centre line.
    pub station: Length,
    /// Level of the ground on the centre line.
    pub ground: Length,
    /// Ground to the underside of the board.
    pub height: Length,
    /// Centre line to the inner face of the left bar at the ground.
    pub left_offset: Length,
    /// The same on the right.
    pub right_offset: Length,
    /// Ground to the underside of the board at the left bar, plumb.
    pub left_rise: Length,
    /// The same on the right.
    pub right_rise: Length,
}

impl FrameRow {
    /// Between the inner faces of the bars at the ground.
    pub fn base_width(&self) -> Length {
        self.left_offset + self.right_offset
    }
}

/// The bars of all frames.
#[derive(Debug, Clone, PartialEq)]
pub struct Bars {
    /// Two to a frame.
    pub count: usize,
    /// The shortest that would do.
    pub needed: Length,
    /// The shortest stock length that does; `None` if none does.
    pub chosen: Option<Length>,
    /// Nominal diameter.
    pub diameter: Length,
    /// All bars together, if a stock length does.
    pub mass: Option<Mass>,
}

/// One move of a frame along the line.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Move {
    /// The frame, counted from 1 at station 0.
    pub frame: usize,
    /// Where it stood.
    pub from: Length,
    /// Where it goes.
    pub to: Length,
    /// The wall must stand to its full height up to here before the frame is drawn.
    pub built_to: Length,
}

/// A height at which the string is set, and the wall's width there.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct StringHeight {
    /// Above the ground at station 0.
    pub height: Length,
    /// Between the faces.
    pub width: Length,
}

impl Frames {
    /// The setting-out of `length` of straight wall on level ground.
    ///
    /// # Errors
    /// [`Error::UnknownBar`] if the table has no such bar.
    pub fn set_out(
        wall: &WallGiven,
        section: &Section,
        length: Length,
        given: &FramesGiven,
        bars: &[Bar],
    ) -> Result<Self, Error> {
        let stations = stations(length, &wall.joints, given.spacing);
        let rows: Vec<FrameRow> = stations.iter().map(|&at| row(section, at)).collect();
        let in_stock = given.in_stock.map(|count| count as usize);
        Ok(Self {
            bay: stations.windows(2).map(|pair| pair[1] - pair[0]).fold(
                metres(0.0),
                |longest, bay| if longest < bay { bay } else { longest },
            ),
            sets: rows.len().div_ceil((given.set_size as usize).max(1)),
            short: in_stock.map(|have| rows.len().saturating_sub(have)),
            end_profiles: wall.ends.iter().filter(|end| **end == End::Head).count(),
            bars: choose_bars(section, rows.len(), given, bars)?,
            moves: in_stock.map_or_else(Vec::new, |have| moves(&stations, have)),
            strings: strings(section, &wall.through_rows),
            rows,
        })
    }

    /// Across the longest bay at the ground. Both diagonals alike is a bay set square.
    pub fn diagonal(&self) -> Length {
        let width = self.rows.first().map_or(metres(0.0), FrameRow::base_width);
        diagonal(self.bay, width)
    }
}

/// From a left bar's inner face to the next right one's, along the ground, where both
/// frames have the same offsets and stand on a straight: `sqrt(bay² + base width²)`.
pub fn diagonal(bay: Length, base_width: Length) -> Length {
    metres(bay.si().hypot(base_width.si()))
}

/// Station 0, the end, every joint, and between them equal bays no longer than `spacing`.
fn stations(length: Length, joints: &[Length], spacing: Length) -> Vec<Length> {
    let mut stations = vec![metres(0.0)];
    let mut from = metres(0.0);
    for &to in joints.iter().chain(std::iter::once(&length)) {
        let bays = steps_to_cover(to - from, spacing);
        for bay in 1..=bays {
            // The last station of a stretch is its end exactly, not a sum of bays.
            let along = if bay == bays {
                to
            } else {
                from + (to - from) * (bay as f64 / bays as f64)
            };
            stations.push(along);
        }
        from = to;
    }
    stations
}

fn row(section: &Section, station: Length) -> FrameRow {
    let rise = section.height();
    FrameRow {
        station,
        ground: metres(0.0),
        height: rise,
        left_offset: section.offset(Side::Left, rise),
        right_offset: section.offset(Side::Right, rise),
        left_rise: rise,
        right_rise: rise,
    }
}

/// Needed: `rise · sqrt(1 + 1/n²) + embedment + projection`, for the face that leans most.
fn choose_bars(
    section: &Section,
    frames: usize,
    given: &FramesGiven,
    table: &[Bar],
) -> Result<Bars, Error> {
    let bar = table
        .iter()
        .find(|bar| bar.key == given.bar)
        .ok_or_else(|| Error::UnknownBar {
            given: given.bar.clone(),
            known: table.iter().map(|bar| bar.key.clone()).collect(),
        })?;
    let slope = [Side::Left, Side::Right]
        .map(|side| section.batter(side).slope_factor())
        .into_iter()
        .fold(1.0, f64::max);
    let needed = section.height() * slope + given.embedment + given.projection;
    let chosen = given
        .stock_lengths
        .iter()
        .copied()
        .filter(|stock| needed.si() <= stock.si() + 1e-9)
        .min_by(|a, b| a.si().total_cmp(&b.si()));
    let count = 2 * frames;
    let mass = chosen.map(|length| bar.mass * length * count as f64);
    Ok(Bars {
        count,
        needed,
        chosen,
        diameter: bar.diameter,
        mass,
    })
}

/// The leapfrog: all but the foremost frame in use go ahead of it, in order, each once the
/// wall behind it stands; repeated until the end of the line.
fn moves(stations: &[Length], in_stock: usize) -> Vec<Move> {
    if stations.len() <= in_stock {
        return Vec::new();
    }
    let in_use = in_stock.max(LEAST_IN_USE);
    let mut standing: Vec<usize> = (1..=in_use.min(stations.len())).collect();
    let mut at: Vec<usize> = (0..standing.len()).collect();
    let mut moves = Vec::new();
    for next in standing.len()..stations.len() {
        let frame = standing.remove(0);
        let from = at.remove(0);
        // The bay ahead of a frame must be finished before its bars come out.
        let built_to = stations[from + 1];
        moves.push(Move {
            frame,
            from: stations[from],
            to: stations[next],
            built_to,
        });
        standing.push(frame);
        at.push(next);
    }
    moves
}

/// Each lift (ground to the first through row, row to row, last row to the top) in equal
/// steps of at most [`STRING_STEP_M`], so that a string always stands at a through row.
fn strings(section: &Section, through_rows: &[Length]) -> Vec<StringHeight> {
    let mut rows = through_rows.to_vec();
    rows.sort_by(|a, b| a.si().total_cmp(&b.si()));
    let mut strings = Vec::new();
    let mut from = metres(0.0);
    for to in rows.into_iter().chain(std::iter::once(section.height())) {
        if to <= from {
            continue;
        }
        let steps = steps_to_cover(to - from, metres(STRING_STEP_M));
        for step in 1..=steps {
            let height = if step == steps {
                to
            } else {
                from + (to - from) * (step as f64 / steps as f64)
            };
            strings.push(StringHeight {
                height,
                width: section.width_at(height),
            });
        }
        from = to;
    }
    strings
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at(stations: &[Length]) -> Vec<f64> {
        stations
            .iter()
            .map(|station| (station.si() * 1000.0).round() / 1000.0)
            .collect()
    }

    #[test]
    fn frames_stand_at_the_ends_the_joints_and_between() {
        let all = stations(metres(9.0), &[], metres(3.0));
        assert_eq!(at(&all), [0.0, 3.0, 6.0, 9.0]);
        let all = stations(metres(9.1), &[metres(4.0)], metres(3.0));
        assert_eq!(at(&all), [0.0, 2.0, 4.0, 6.55, 9.1]);
    }

    #[test]
    fn a_leapfrog_never_uses_fewer_than_three_and_never_draws_an_unbuilt_bay() {
        let line = stations(metres(15.0), &[], metres(3.0));
        let moves = moves(&line, 1);
        assert_eq!(moves.len(), line.len() - LEAST_IN_USE);
        for one in &moves {
            assert!(one.from < one.built_to && one.built_to < one.to);
        }
        assert_eq!(moves.last().map(|one| one.to), line.last().copied());
    }

    /// By hand: 3-4-5 (Pythagoras).
    #[test]
    fn three_and_four_make_five() {
        assert!((diagonal(metres(4.0), metres(3.0)).si() - 5.0).abs() < 1e-12);
    }
}
