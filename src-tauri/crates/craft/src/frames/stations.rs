//! Where frames stand along the line, and the marks of each.

use super::bays::spacing_for;
use crate::course::{CurveSpacing, FramesGiven};
use crate::quantity::{Length, Read, metres, steps_to_cover};
use crate::wall::{Across, Bend, Side, Wall};

/// One frame: where it stands and its marks.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FrameRow {
    /// Along the centre line.
    pub station: Length,
    /// Level of the ground on the centre line.
    pub ground: Length,
    /// Ground to the underside of the board, on the centre line.
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

    /// The offset at one side.
    pub fn offset(&self, side: Side) -> Length {
        match side {
            Side::Left => self.left_offset,
            Side::Right => self.right_offset,
        }
    }

    /// The rise at one side.
    pub fn rise(&self, side: Side) -> Length {
        match side {
            Side::Left => self.left_rise,
            Side::Right => self.right_rise,
        }
    }

    /// Level of the underside of the board.
    pub fn board(&self) -> Length {
        self.ground + self.height
    }

    /// Whether a level board has equal rises on both sides, as on level ground.
    pub fn is_level_across(&self) -> bool {
        (self.left_rise - self.right_rise).si().abs() < 1e-9
    }
}

/// Station 0, the end, every joint of the line and every step of the top, and between them
/// equal bays no longer than the spacing of that stretch. The end of a ring is its station 0
/// again.
pub(super) fn stations(wall: &Wall, frames: &FramesGiven) -> Vec<Length> {
    let steps = wall.steps();
    let mut stations = vec![metres(0.0)];
    for (from, to, bend) in wall.line.spans() {
        let spacing = bend.map_or(frames.spacing, |bend| {
            spacing_on(wall, frames, (from, to), bend)
        });
        let mut at = from;
        // A step within a hair of a joint is the joint.
        let hair = metres(0.001);
        let inside = steps
            .iter()
            .filter(|step| from + hair < **step && **step < to - hair);
        for &next in inside.chain(std::iter::once(&to)) {
            stations.extend(equal_bays(at, next, spacing));
            at = next;
        }
    }
    stations
}

/// The stations after `from`, up to `to`.
fn equal_bays(from: Length, to: Length, spacing: Length) -> impl Iterator<Item = Length> {
    let bays = steps_to_cover(to - from, spacing);
    (1..=bays).map(move |bay| {
        // The last station of a stretch is its end exactly, not a sum of bays.
        if bay == bays {
            to
        } else {
            from + (to - from) * (bay as f64 / bays as f64)
        }
    })
}

/// The spacing on an arc: as given, or what keeps the string at the outer face within the
/// tolerance where the wall is widest.
fn spacing_on(
    wall: &Wall,
    frames: &FramesGiven,
    (from, to): (Length, Length),
    bend: Bend,
) -> Length {
    match frames.curve {
        CurveSpacing::AtMost(spacing) => spacing,
        CurveSpacing::KeepsUnderTolerance => {
            let outer = bend.turn.other();
            let offsets = [from, (from + to) / 2.0, to].map(|at| wall.offset(outer, at));
            let widest =
                offsets.into_iter().fold(
                    offsets[0],
                    |widest, it| if widest < it { it } else { widest },
                );
            spacing_for(bend, outer, widest, frames.tolerance)
        }
    }
}

/// One row per frame; a ring's last station is its first again and has none.
pub(super) fn rows(wall: &Wall, stations: &[Length]) -> Vec<FrameRow> {
    let own = if wall.is_ring() {
        stations.len().saturating_sub(1)
    } else {
        stations.len()
    };
    stations.iter().take(own).map(|&at| row(wall, at)).collect()
}

fn row(wall: &Wall, station: Length) -> FrameRow {
    FrameRow {
        station,
        ground: wall.ground.level(Across::Centre, station),
        height: wall.height_at(station),
        left_offset: wall.offset(Side::Left, station),
        right_offset: wall.offset(Side::Right, station),
        left_rise: wall.rise(Side::Left, station),
        right_rise: wall.rise(Side::Right, station),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at(from: f64, to: f64) -> Vec<f64> {
        equal_bays(metres(from), metres(to), metres(3.0))
            .map(|station| (station.si() * 1000.0).round() / 1000.0)
            .collect()
    }

    #[test]
    fn bays_are_equal_and_no_longer_than_the_spacing() {
        assert_eq!(at(0.0, 9.0), [3.0, 6.0, 9.0]);
        assert_eq!(at(0.0, 4.0), [2.0, 4.0]);
        assert_eq!(at(4.0, 9.1), [6.55, 9.1]);
    }
}
