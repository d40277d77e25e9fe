//! How large a wall is to be, which may change while it is being built.

use super::WallGiven;
use crate::quantity::{Length, Read};

/// How large a wall is to be: it is made lower, shorter or longer while it is being built.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WallSize {
    /// Along its line.
    pub length: Length,
    /// Ground to the underside of the cope.
    pub height: Length,
    /// Height of the cope; 0 m for none.
    pub cope_height: Length,
}

/// Two sizes are one where they differ by less than a tape is read to.
const TAPE_M: f64 = 0.005;

impl WallSize {
    /// Whether it is the same size.
    pub fn is(&self, other: &Self) -> bool {
        let same = |one: Length, two: Length| (one - two).si().abs() < TAPE_M;
        same(self.length, other.length)
            && same(self.height, other.height)
            && same(self.cope_height, other.cope_height)
    }
}

impl WallGiven {
    /// Its size when it is so long.
    pub fn size(&self, length: Length) -> WallSize {
        WallSize {
            length,
            height: self.height,
            cope_height: self.cope_height,
        }
    }

    /// The same wall of another size. Rows of throughs that stand above it are not in it.
    pub fn of_size(&self, size: WallSize) -> Self {
        let mut wall = self.clone();
        wall.through_rows.retain(|row| *row < size.height);
        wall.length = Some(size.length);
        wall.height = size.height;
        wall.cope_height = size.cope_height;
        wall
    }
}
