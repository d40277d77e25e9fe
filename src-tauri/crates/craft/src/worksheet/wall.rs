//! The walls that questions are about: alike on both faces, straight, on level ground.

use super::draw::Draw;
use super::scale::Scale;
use crate::Error;
use crate::course::{End, ThroughReach, ThroughSize, WallGiven, WallKind};
use crate::quantity::{Length, millimetres};
use crate::wall::{Batter, Section, Top};

/// The n of the batters asked about.
pub(super) const BATTERS: [u32; 4] = [6, 8, 10, 12];

/// A wall as a question gives it.
#[derive(Debug, Clone, Copy)]
pub(super) struct Wall {
    pub(super) height: Length,
    pub(super) top: Length,
    /// Both faces lean 1 in this.
    pub(super) one_in: u32,
}

/// Heights to the cope, in marks.
pub(super) fn heights(scale: Scale) -> Vec<u32> {
    scale.either(
        (90..=150).step_by(5).collect(),
        (36..=60).step_by(2).collect(),
    )
}

/// Widths under the cope, in marks.
pub(super) fn tops(scale: Scale) -> &'static [u32] {
    scale.either(
        &[30, 32, 35, 36, 38, 40, 42, 45],
        &[12, 13, 14, 15, 16, 17, 18],
    )
}

impl Wall {
    /// A wall whose base comes out in whole marks or quarters. Neighbours differ in batter.
    pub(super) fn draw(draw: &mut Draw, scale: Scale) -> Option<Self> {
        let one_in = draw.pick_unlike_neighbours(&BATTERS)?;
        let mut walls = Vec::new();
        for height in heights(scale) {
            for &top in tops(scale) {
                let wall = Self {
                    height: scale.marks(height),
                    top: scale.marks(top),
                    one_in,
                };
                if scale.comes_out(2 * height, one_in) && wall.is_usual() {
                    walls.push(wall);
                }
            }
        }
        draw.pick(&walls)
    }

    /// At least half as wide at the ground as it is high (common practice, no source): no
    /// one should learn from a question that less will stand. Just half is usual, whatever the
    /// last binary digit says.
    pub(super) fn is_usual(&self) -> bool {
        self.section()
            .is_ok_and(|section| section.height() <= section.base_width() * 2.0 + millimetres(0.01))
    }

    pub(super) fn section(&self) -> Result<Section, Error> {
        let batter = Batter::one_in(f64::from(self.one_in))?;
        Section::new(self.height, self.top, batter, batter)
    }

    /// The wall with nothing on it, in it or under it; a question adds what it asks about.
    ///
    /// Every field is written out, so that whoever gives a wall something new has to say
    /// here what a question's wall has of it.
    pub(super) fn given(&self) -> Result<WallGiven, Error> {
        let batter = Batter::one_in(f64::from(self.one_in))?;
        Ok(WallGiven {
            kind: WallKind::Freestanding,
            height: self.height,
            top_width: self.top,
            left: batter,
            right: batter,
            cope_height: millimetres(0.0),
            cope_thickness: millimetres(100.0),
            length: None,
            line: Vec::new(),
            ground: Vec::new(),
            top: Top::Level,
            through_rows: Vec::new(),
            through_spacing: millimetres(900.0),
            through: ThroughSize {
                width: millimetres(300.0),
                thickness: millimetres(120.0),
                projection: millimetres(0.0),
            },
            trench_dug: false,
            through_reach: ThroughReach::Across,
            footing: None,
            ends: [End::Joined, End::Joined],
            head_batter: [Batter::PLUMB; 2],
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{Read, Units};
    use crate::worksheet::Kind;

    #[test]
    fn walls_are_like_those_that_stand() {
        for units in [Units::Metric, Units::Imperial] {
            for student in 0..500 {
                let mut draw = Draw::new(8, student, Kind::BaseWidth);
                let wall = Wall::draw(&mut draw, Scale::of(units)).expect("lists are not empty");
                let (height, top) = (wall.height.si(), wall.top.si());
                let base = wall.section().expect("sound").base_width().si();
                assert!((0.9..=1.53).contains(&height), "{wall:?}");
                assert!((0.3..=0.46).contains(&top), "{wall:?}");
                assert!(height / 2.0 <= base + 1e-9, "{wall:?}");
            }
        }
    }
}
