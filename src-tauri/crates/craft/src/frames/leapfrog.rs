//! The leapfrog: where fewer frames are in stock than the line has stations.

use super::FrameRow;
use crate::quantity::Length;

/// The fewest frames in use when they leapfrog: two hold the string, one is moved.
pub const LEAST_IN_USE: usize = 3;

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

/// What building in bays does to the work.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Leapfrog {
    /// Frames that stand at one time.
    pub in_use: usize,
    /// The stretch of wall they span, which is all that can be worked at once.
    pub room: Length,
    /// Facing pairs that find a place there.
    pub pairs: usize,
    /// Facing pairs the group makes.
    pub of_pairs: usize,
}

/// The leapfrog: all but the foremost frame in use go ahead of it, in order, each once the
/// wall behind it stands; repeated until the end of the line.
pub(super) fn moves(rows: &[FrameRow], in_stock: usize) -> Vec<Move> {
    let stations: Vec<Length> = rows.iter().map(|row| row.station).collect();
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::metres;

    fn rows(stations: &[f64]) -> Vec<FrameRow> {
        let nothing = metres(0.0);
        stations
            .iter()
            .map(|&at| FrameRow {
                station: metres(at),
                ground: nothing,
                height: nothing,
                left_offset: nothing,
                right_offset: nothing,
                left_rise: nothing,
                right_rise: nothing,
            })
            .collect()
    }

    #[test]
    fn never_fewer_than_three_and_never_an_unbuilt_bay() {
        let line = rows(&[0.0, 3.0, 6.0, 9.0, 12.0, 15.0]);
        let moves = moves(&line, 1);
        assert_eq!(moves.len(), line.len() - LEAST_IN_USE);
        for one in &moves {
            assert!(one.from < one.built_to && one.built_to < one.to);
        }
        assert_eq!(moves.last().map(|one| one.to), Some(metres(15.0)));
    }
}
