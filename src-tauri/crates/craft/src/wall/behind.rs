//! What is laid against one face of a wall: the drainage stone behind one that holds a bank.

use super::volume::along;
use super::{Bend, Piece, Section, Side, Wall};
use crate::quantity::{Length, Read, Volume, cubic_metres, metres};

impl Wall {
    /// A layer so thick, measured level, against the face on one side, from the ground on the
    /// centre line up to the top; inside a tight bend no thicker, at each station, than reaches
    /// the bend's centre from the foot of the wall.
    pub fn behind(&self, side: Side, thickness: Length) -> Volume {
        let layer = Layer {
            section: self.section,
            side,
            thickness,
        };
        let pieces = self.pieces();
        let volumes = pieces.iter().map(|piece| layer.beside(piece));
        volumes.fold(cubic_metres(0.0), |sum, one| sum + one)
    }
}

struct Layer {
    section: Section,
    side: Side,
    thickness: Length,
}

impl Layer {
    /// `∫ t h (1 + c r) ds`, r the arm of the layer's middle: where its thickness t changes evenly
    /// with the local height h a cubic in s, so that Simpson's rule is exact part by part.
    fn beside(&self, piece: &Piece) -> Volume {
        let right = match self.side {
            Side::Left => -1.0,
            Side::Right => 1.0,
        };
        let top = self.section.top_width().si();
        let lean = self.section.batter(self.side).lean();
        along(&self.even_parts(piece), |height| {
            let thick = self.thick(piece, metres(height)).si();
            // The middle of the layer lies half its thickness beyond the face.
            let arm = (top + height * lean + thick) / 2.0;
            (thick * height, right * thick * height * arm)
        })
    }

    /// The piece in parts, broken where the room inside its bend begins to be less than the
    /// layer, and where there is none left.
    fn even_parts(&self, piece: &Piece) -> Vec<Piece> {
        let Some(bend) = self.inside_of(piece) else {
            return vec![*piece];
        };
        let lean = self.section.batter(self.side).lean();
        // A plumb face has the same room at every height: the quotient is no height at all.
        let with_room = |room| (bend.radius - room - self.section.top_width() / 2.0) / lean;
        let [less, none] = [self.thickness, metres(0.0)].map(with_room);
        let parts = piece.broken_where(less);
        parts
            .iter()
            .flat_map(|one| one.broken_where(none))
            .collect()
    }

    /// How thick it is where the wall is so high.
    fn thick(&self, piece: &Piece, height: Length) -> Length {
        let Some(bend) = self.inside_of(piece) else {
            return self.thickness;
        };
        let room = bend.radius - self.section.offset(self.side, height);
        if room < metres(0.0) {
            metres(0.0)
        } else if room < self.thickness {
            room
        } else {
            self.thickness
        }
    }

    fn inside_of(&self, piece: &Piece) -> Option<Bend> {
        piece.bend.filter(|bend| bend.turn == self.side)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::wall::{Batter, Ground, Line, Stretch, Survey, Top};
    use std::f64::consts::TAU;

    const RADIUS_M: f64 = 0.9;
    const TOP_M: f64 = 0.4;
    const LEAN: f64 = 0.25;

    /// A round of wall, its top level, on ground that falls evenly, surveyed in so many places.
    fn round(heights: [f64; 2], surveyed: u32) -> Wall {
        let around = TAU * RADIUS_M;
        let batter = || Batter::one_in(1.0 / LEAN).expect("more than nothing");
        let [height, far] = heights.map(metres);
        let section = Section::new(height, metres(TOP_M), batter(), batter());
        let bend = Some(Bend {
            radius: metres(RADIUS_M),
            turn: Side::Left,
        });
        let length = metres(around);
        let fall = height - far;
        let survey = |at: u32| {
            let share = f64::from(at) / f64::from(surveyed);
            let [station, level] = [length * share, fall * share];
            Survey {
                station,
                level,
                left: level,
                right: level,
            }
        };
        Wall {
            section: section.expect("sound"),
            line: Line::of_length(&[Stretch { length, bend }], length),
            ground: Ground::new((0..=surveyed).map(survey).collect()),
            top: Top::Level,
        }
    }

    /// In thin slices across the line, each a part of a ring from the face inwards: its thickness
    /// times its height times the length of its middle.
    fn in_slices(heights: [f64; 2], thickness: f64) -> f64 {
        let slices = 100_000;
        let slice = |at: u32| {
            let share = (f64::from(at) + 0.5) / f64::from(slices);
            let height = heights[0] + (heights[1] - heights[0]) * share;
            let foot = TOP_M / 2.0 + height * LEAN;
            let thick = thickness.min(RADIUS_M - foot).max(0.0);
            // The layer leans as the face does: half-way up it stands half the set-back nearer.
            let middle = RADIUS_M - TOP_M / 2.0 - height * LEAN / 2.0 - thick / 2.0;
            thick * height * middle * TAU / f64::from(slices)
        };
        (0..slices).map(slice).sum()
    }

    /// By slices: wide enough everywhere, too narrow at the high end, and no room there at all.
    #[test]
    fn inside_a_tight_bend_the_layer_is_as_thick_as_there_is_room() {
        for heights in [[0.5, 1.0], [0.5, 2.0], [2.0, 3.0], [3.2, 0.5]] {
            let summed = in_slices(heights, 0.3);
            let ours = round(heights, 1).behind(Side::Left, metres(0.3)).si();
            assert!(
                (ours / summed - 1.0).abs() < 1e-8,
                "{heights:?}: {ours} and {summed}"
            );
        }
    }

    #[test]
    fn surveying_the_same_ground_finer_changes_nothing() {
        let of = |surveyed| {
            round([3.2, 0.5], surveyed)
                .behind(Side::Left, metres(0.3))
                .si()
        };
        for surveyed in [2, 3, 7, 50] {
            assert!((of(surveyed) / of(1) - 1.0).abs() < 1e-12, "{surveyed}");
        }
    }
}
