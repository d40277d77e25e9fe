//! What a straight wall on level ground holds: body, footing, cope and face.

use super::{Section, Side};
use crate::quantity::{Area, Length, Volume, cubic_metres};

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
    /// The volumes of `length` of straight wall on level ground.
    ///
    /// body: `A · L`; footing: `(w(0) + 2 · outset) · depth · L`; cope:
    /// `T · cope height · L`. Plane geometry.
    pub fn of(
        section: &Section,
        length: Length,
        footing: Option<Footing>,
        cope_height: Length,
    ) -> Self {
        let footing = footing.map_or(cubic_metres(0.0), |footing| {
            (section.base_width() + footing.outset * 2.0) * footing.depth * length
        });
        Self {
            body: section.area() * length,
            footing,
            cope: section.top_width() * cope_height * length,
            face: section.height() * length,
        }
    }
}

/// What one raked end leaves out of the body when it steps back one along for one up.
///
/// `V = ∫ w(y) · y dy` from the ground to the top `= w(0) H²/2 - k H³/3`. The slope of one
/// in one is common practice, no source.
pub fn raked_away(section: &Section) -> Volume {
    let h = section.height();
    let sides = section.batter(Side::Left).lean() + section.batter(Side::Right).lean();
    section.base_width() * h * h / 2.0 - h * h * h * (sides / 3.0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{Read, metres};
    use crate::wall::Batter;

    /// Two roads to one answer: the closed form against slices summed.
    #[test]
    fn what_a_raked_end_leaves_out_is_the_sum_of_its_slices() {
        let six = Batter::one_in(6.0).expect("sound");
        let eight = Batter::one_in(8.0).expect("sound");
        let section = Section::new(metres(1.2), metres(0.4), six, eight).expect("sound");
        let slices = 2000;
        let step = 1.2 / f64::from(slices);
        let summed: f64 = (0..slices)
            .map(|i| {
                let y = (f64::from(i) + 0.5) * step;
                section.width_at(metres(y)).si() * y * step
            })
            .sum();
        assert!((raked_away(&section).si() - summed).abs() < 1e-6);
    }
}
