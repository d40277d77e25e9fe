//! The boards that join two bars, and the bars where a trench is dug.

use super::FrameRow;
use crate::course::FramesGiven;
use crate::quantity::{Length, Read, metres};
use crate::tables::{BoardTable, FrameTable};
use crate::wall::{Batter, Footing, Section, Side};

/// The board of a frame, with an eye for each bar. Its underside lies at the top of the wall.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Board {
    /// Along the board.
    pub length: Length,
    /// Along the wall.
    pub width: Length,
    /// Upwards.
    pub thickness: Length,
    /// From the middle of one eye to the middle of the other, at the underside.
    pub eyes: Length,
    /// Of an eye across: the leaning bar and its play.
    pub eye: Length,
}

/// Bars where a trench is dug.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Trench {
    /// The footing stands out beyond the face, so that the bars pass through it.
    pub through_footing: bool,
    /// Gaps to leave in the footing, one for each bar that passes through it.
    pub gaps: usize,
    /// Width of a gap along the wall.
    pub gap: Length,
    /// Along the bar, below the bottom of the trench: all that grips.
    pub grip: Length,
    /// It is less than bars need to stand.
    pub too_little: bool,
}

impl Board {
    /// A bar of diameter d that leans 1 in n is `d sqrt(1 + 1/n²)` wide where a level board
    /// meets it. So the eyes stand `T + d (sqrt(1 + 1/n_l²) + sqrt(1 + 1/n_r²)) / 2` apart
    /// from middle to middle, and an eye has to be as wide as that, wider by `t/n` for the
    /// lean within a board of thickness t, and by the play that lets it slide.
    pub(super) fn of(section: &Section, diameter: Length, table: &BoardTable) -> Self {
        let across = |batter: Batter| diameter * batter.slope_factor();
        let [left, right] = Side::BOTH.map(|side| section.batter(side));
        let eyes = section.top_width() + (across(left) + across(right)) / 2.0;
        let steeper = if left.lean() < right.lean() {
            right
        } else {
            left
        };
        Self {
            length: eyes + table.overhang * 2.0,
            width: table.width,
            thickness: table.thickness,
            eyes,
            eye: across(steeper) + table.thickness * steeper.lean() + table.play,
        }
    }
}

impl Trench {
    /// So many bars of a diameter where this footing is dug.
    pub(super) fn of(
        footing: Footing,
        section: &Section,
        (bars, diameter): (usize, Length),
        given: &FramesGiven,
        table: &FrameTable,
    ) -> Self {
        let slope = Side::BOTH
            .map(|side| section.batter(side).slope_factor())
            .into_iter()
            .fold(1.0, f64::max);
        let through_footing = metres(0.0) < footing.outset;
        // Dug ground beside the trench is loose: nothing above its bottom is counted.
        let grip = given.embedment - footing.depth * slope;
        Self {
            through_footing,
            gaps: if through_footing { bars } else { 0 },
            gap: diameter + table.gap_play * 2.0,
            grip: if grip < metres(0.0) {
                metres(0.0)
            } else {
                grip
            },
            too_little: grip.si() < table.least_grip.si() - 1e-9,
        }
    }
}

/// From the left bar's foot at the ground to the inner corner of the right bar under the board,
/// and from the right foot to the left corner: what a tape reads when both bars lean as they
/// should. `sqrt((T/2 + offset)² + rise²)` with the offset and the rise of the foot's side.
/// Plane geometry; the same for the legs of a timber frame under its top rail.
pub fn corner_diagonals(row: &FrameRow, top_width: Length) -> [Length; 2] {
    Side::BOTH.map(|side| {
        let across = row.offset(side) + top_width / 2.0;
        metres(across.si().hypot(row.rise(side).si()))
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::millimetres;

    /// By hand: a 16 mm bar at 1 in 6 is 16 · 1.013794 = 16.2207 mm wide in a level board, so
    /// that with a top of 410 mm the eyes stand 426.2207 mm apart; through a board 30 mm thick
    /// an eye with 2 mm of play is 16.2207 + 30/6 + 2 = 23.2207 mm wide.
    #[test]
    fn eyes_are_set_for_the_lean_and_the_thickness_of_the_bar() {
        let six = Batter::one_in(6.0).expect("sound");
        let section = Section::new(metres(1.07), metres(0.41), six, six).expect("sound");
        let table = BoardTable {
            width: millimetres(100.0),
            thickness: millimetres(30.0),
            overhang: millimetres(75.0),
            play: millimetres(2.0),
            source: String::new(),
        };
        let board = Board::of(&section, millimetres(16.0), &table);
        assert!((board.eyes.si() - 0.426_220_7).abs() < 1e-7);
        assert!((board.eye.si() - 0.023_220_7).abs() < 1e-7);
        assert!((board.length.si() - 0.576_220_7).abs() < 1e-7);
    }

    /// By hand: feet 0.5 m and 0.3 m off the middle under a top of 0.8 m are 0.9 m and 0.7 m
    /// from the far corners; with rises of 1.2 m and 2.4 m that is 1.5 m (3-4-5) and 2.5 m
    /// (7-24-25).
    #[test]
    fn diagonals_run_from_a_foot_to_the_far_corner() {
        let row = FrameRow {
            station: metres(0.0),
            ground: metres(0.0),
            height: metres(1.8),
            left_offset: metres(0.5),
            right_offset: metres(0.3),
            left_rise: metres(1.2),
            right_rise: metres(2.4),
        };
        let [from_left, from_right] = corner_diagonals(&row, metres(0.8));
        assert!((from_left.si() - 1.5).abs() < 1e-12);
        assert!((from_right.si() - 2.5).abs() < 1e-12);
    }
}
