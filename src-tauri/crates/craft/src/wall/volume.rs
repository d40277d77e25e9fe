//! What a wall holds: body, footing, cope and face, along slopes and round arcs.

use super::{Piece, Section, Side, Wall};
use crate::quantity::{Area, Length, Read, Volume, cubic_metres, metres, square_metres};

/// The trench and the stones in it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Footing {
    /// Ground to the bottom of the trench.
    pub depth: Length,
    /// How far it stands out beyond the face, each side.
    pub outset: Length,
}

/// The volumes of a wall, air included, and its face.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Volumes {
    /// Ground to the underside of the cope.
    pub body: Volume,
    /// Below the ground; nothing without a footing.
    pub footing: Volume,
    /// The row on top; nothing without a cope.
    pub cope: Volume,
    /// One face as the trade measures it: length by height to the cope.
    pub face: Area,
}

impl Volumes {
    /// The volumes of a wall as it stands.
    ///
    /// body: `∫ A(h) (1 + c M(h)/A(h)) ds`, the section of the local height h carried along
    /// the path of its centroid (the theorem of Pappus; c is the curvature of the centre
    /// line). Where h changes evenly the integrand is a cubic in s, so that Simpson's rule is
    /// exact piece by piece. Footing: `∫ (T + h k + 2 · outset) · depth ds`, with its own
    /// centroid. Cope: `T · cope height · L`. Face: `∫ h ds`.
    pub fn of(wall: &Wall, footing: Option<Footing>, cope_height: Length) -> Self {
        let pieces = wall.pieces();
        Self {
            body: body(&wall.section, &pieces),
            footing: footing.map_or(cubic_metres(0.0), |it| {
                footing_volume(&wall.section, &pieces, it)
            }),
            cope: wall.section.top_width() * cope_height * wall.length(),
            face: pieces.iter().fold(square_metres(0.0), |sum, piece| {
                sum + (piece.height[0] + piece.height[1]) * (piece.to - piece.from) / 2.0
            }),
        }
    }
}

/// The body from the top down to the local height of each piece.
pub(super) fn body(section: &Section, pieces: &[Piece]) -> Volume {
    along(pieces, |depth| {
        let depth = metres(depth);
        (
            section.area_to_depth(depth).si(),
            section.moment_to_depth(depth).si(),
        )
    })
}

fn footing_volume(section: &Section, pieces: &[Piece], footing: Footing) -> Volume {
    let lopsided = section.batter(Side::Right).lean() - section.batter(Side::Left).lean();
    along(pieces, |height| {
        let width = section.top_width() + metres(height) * section.narrowing();
        let area = ((width + footing.outset * 2.0) * footing.depth).si();
        // The middle of the base lies half the difference of both set-backs off the centre.
        (area, area * height * lopsided / 2.0)
    })
}

/// Simpson's rule along each piece for something whose area (m²) and moment about the centre
/// line (m³, positive to the right) follow from the local height (m).
pub(super) fn along(pieces: &[Piece], of: impl Fn(f64) -> (f64, f64)) -> Volume {
    let sum = pieces
        .iter()
        .map(|piece| {
            let curvature = piece.bend.map_or(0.0, super::Bend::curvature);
            let at = |height: f64| {
                let (area, moment) = of(height);
                area + curvature * moment
            };
            let [from, to] = piece.height.map(Read::si);
            let length = (piece.to - piece.from).si();
            length / 6.0 * (at(from) + 4.0 * at((from + to) / 2.0) + at(to))
        })
        .sum();
    cubic_metres(sum)
}

impl Wall {
    /// The part of the body that lies higher than `above_ground`, counted from the ground at
    /// station 0 and running parallel to the top, as rows and strings do.
    pub fn body_above(&self, above_ground: Length) -> Volume {
        let most = self.section.height() - above_ground;
        let pieces: Vec<Piece> = self
            .pieces()
            .iter()
            .flat_map(|piece| piece.lower_than(most))
            .collect();
        body(&self.section, &pieces)
    }
}

impl Piece {
    /// The piece with every height above `most` brought down to it, broken where its height
    /// passes that.
    fn lower_than(&self, most: Length) -> Vec<Self> {
        let lower = |height: Length| if most < height { most } else { height };
        self.broken_where(most)
            .into_iter()
            .map(|piece| Self {
                height: piece.height.map(lower),
                ..piece
            })
            .collect()
    }

    /// Two pieces where its height passes `value` between its ends, else itself.
    pub(super) fn broken_where(&self, value: Length) -> Vec<Self> {
        let [from, to] = self.height;
        let passes = (from < value && value < to) || (to < value && value < from);
        if !passes {
            return vec![*self];
        }
        let share = (value - from) / (to - from);
        let at = self.from + (self.to - self.from) * share;
        let top = self.top[0] + (self.top[1] - self.top[0]) * share;
        vec![
            Self {
                to: at,
                top: [self.top[0], top],
                height: [from, value],
                ..*self
            },
            Self {
                from: at,
                top: [top, self.top[1]],
                height: [value, to],
                ..*self
            },
        ]
    }
}

#[cfg(test)]
mod tests;
