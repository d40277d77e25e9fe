//! The cut list: like pieces of all frames together, to the millimetre.

use super::frame::{Part, Piece};
use crate::quantity::{Length, Read, millimetres, whole_number};
use std::collections::BTreeMap;

/// What a piece is while it is being sawn. A left leg turned over is a right leg, and the two
/// rails differ by their length alone.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Kind {
    /// A leg, both ends sawn level.
    Leg,
    /// A rail, both ends square.
    Rail,
    /// A brace, its ends sawn along the legs.
    Brace,
}

impl Kind {
    fn of(part: Part) -> Self {
        match part {
            Part::LeftLeg | Part::RightLeg => Self::Leg,
            Part::TopRail | Part::LowerRail => Self::Rail,
            Part::Brace => Self::Brace,
        }
    }
}

/// Where one of the pieces goes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Use {
    /// The frame, counted from 1 at station 0.
    pub frame: usize,
    /// The place in it.
    pub part: Part,
}

/// One line of the cut list: so many pieces all alike.
#[derive(Debug, Clone, PartialEq)]
pub struct CutRow {
    /// What they are.
    pub kind: Kind,
    /// The longest edge, to the millimetre.
    pub length: Length,
    /// What each takes from the batten: from tip to tip and what a slanting saw cut takes more
    /// than a square one, to the millimetre above. Legs sawn one after another share a slanting
    /// cut and need a little less; that is left as a margin.
    pub takes: Length,
    /// How far the saw is set off square at each end, in degrees.
    pub ends_degrees: [f64; 2],
    /// How many.
    pub count: usize,
    /// Where each goes.
    pub uses: Vec<Use>,
}

impl CutRow {
    /// The frames these pieces are for, in order, each once.
    pub fn frames(&self) -> Vec<usize> {
        let mut frames: Vec<usize> = self.uses.iter().map(|one| one.frame).collect();
        frames.sort_unstable();
        frames.dedup();
        frames
    }
}

/// Kind, millimetres and tenths of a degree: pieces alike in these are one line.
type Alike = (Kind, usize, [i64; 2]);

/// Legs, then rails, then braces; the longest of each first. Pieces whose lengths agree to the
/// millimetre and whose saw angles agree to a tenth of a degree are one line.
pub(super) fn cut_list(frames: &[Vec<Piece>], kerf: Length) -> Vec<CutRow> {
    let mut rows: BTreeMap<Alike, CutRow> = BTreeMap::new();
    for (at, pieces) in frames.iter().enumerate() {
        for piece in pieces {
            let row = rows.entry(alike(piece)).or_insert_with(|| first_of(piece));
            row.count += 1;
            row.uses.push(Use {
                frame: at + 1,
                part: piece.part,
            });
            let takes = row.length + beyond(piece, kerf);
            if row.takes < takes {
                row.takes = takes;
            }
        }
    }
    let mut rows: Vec<CutRow> = rows.into_values().collect();
    rows.sort_by(|a, b| {
        let longest_first = b.length.si().total_cmp(&a.length.si());
        a.kind.cmp(&b.kind).then(longest_first)
    });
    rows
}

fn alike(piece: &Piece) -> Alike {
    let tenths = piece.ends_degrees.map(|end| (end * 10.0).round() as i64);
    (Kind::of(piece.part), whole_mm(piece.length), tenths)
}

fn whole_mm(length: Length) -> usize {
    whole_number((length.si() * 1000.0).round())
}

fn first_of(piece: &Piece) -> CutRow {
    let length = millimetres(whole_mm(piece.length) as f64);
    CutRow {
        kind: Kind::of(piece.part),
        length,
        takes: length,
        ends_degrees: piece.ends_degrees,
        count: 0,
        uses: Vec::new(),
    }
}

/// What a piece takes beyond its longest edge, in whole millimetres: the slanting ends, and at
/// each of them `kerf (1/cos - 1)`, since a slanting cut is that much wider along the batten.
fn beyond(piece: &Piece, kerf: Length) -> Length {
    let wider: f64 = piece
        .ends_degrees
        .iter()
        .map(|end| 1.0 / end.to_radians().cos() - 1.0)
        .sum();
    let beyond = piece.overall - piece.length + kerf * wider;
    millimetres((beyond.si() * 1000.0 - 1e-6).ceil().max(0.0))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::metres;
    use crate::timber::Timber;
    use crate::timber::frame::{FrameShape, pieces};
    use crate::wall::Batter;

    /// By hand: two frames alike and one 0.2 m taller, all 1 in 8 both sides, are 4 legs alike
    /// and 2 longer, 3 top rails alike, 2 lower rails and 1 wider, 2 braces and 1 longer.
    #[test]
    fn like_pieces_share_a_line() {
        let eight = Batter::one_in(8.0).expect("more than zero");
        let timber = Timber::default();
        let frames: Vec<Vec<Piece>> = [1.0, 1.2, 1.0]
            .map(|rise| FrameShape {
                top_width: metres(0.4),
                left: eight,
                right: eight,
                left_rise: metres(rise),
                right_rise: metres(rise),
            })
            .iter()
            .map(|shape| pieces(shape, &timber).expect("sound"))
            .collect();
        let list = cut_list(&frames, timber.lumber.kerf);
        let seen: Vec<(Kind, usize, Vec<usize>)> = list
            .iter()
            .map(|row| (row.kind, row.count, row.frames()))
            .collect();
        assert_eq!(
            seen,
            [
                (Kind::Leg, 2, vec![2]),
                (Kind::Leg, 4, vec![1, 3]),
                (Kind::Rail, 1, vec![2]),
                (Kind::Rail, 2, vec![1, 3]),
                (Kind::Rail, 3, vec![1, 2, 3]),
                (Kind::Brace, 1, vec![2]),
                (Kind::Brace, 2, vec![1, 3]),
            ]
        );
        // A leg's tip stands 50/8 = 6.25 mm out and two cuts of 3 mm are 0.02 mm wider each.
        let leg = &list[0];
        assert!((leg.takes - leg.length - millimetres(7.0)).si().abs() < 1e-9);
        let rail = &list[2];
        assert_eq!(rail.takes, rail.length);
    }

    /// By hand: at 60 degrees off square a cut is twice as wide along the batten, so each end
    /// takes another 3 mm, beside the 100 mm by which the tips stand beyond the edge.
    #[test]
    fn slanting_cuts_take_more() {
        let piece = Piece {
            part: Part::Brace,
            length: metres(1.0),
            overall: metres(1.1),
            ends_degrees: [60.0, 60.0],
        };
        let more = beyond(&piece, millimetres(3.0));
        assert!((more - millimetres(106.0)).si().abs() < 1e-9);
    }
}
