//! One stone of the drawing: its outline, and how far it reaches into the wall.

use crate::quantity::{Area, Length, Read, metres, square_metres};

/// A point of the drawing, seen square on.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Point {
    /// Along the wall from station 0 in an elevation; across it from the middle of the
    /// top, left below zero, in a section.
    pub x: Length,
    /// Up from the ground at station 0.
    pub y: Length,
}

impl Point {
    /// The point so many metres along (or across) and up.
    pub(super) fn metres([x, y]: [f64; 2]) -> Self {
        Self {
            x: metres(x),
            y: metres(y),
        }
    }

    /// The same in metres.
    pub(super) fn in_metres(self) -> [f64; 2] {
        [self.x.si(), self.y.si()]
    }
}

/// What a stone does in the wall.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Role {
    /// Below the ground.
    Footing,
    /// In a face.
    Face,
    /// A small wedge that fills a gap between building stones.
    Pinning,
    /// Crosses the wall, or most of it.
    Through,
    /// At a head, long along the face.
    EndLong,
    /// At a head, short along the face and long into the wall.
    EndShort,
    /// Fills the middle; seen in a section only.
    Hearting,
    /// On edge on top.
    Cope,
}

/// One stone.
#[derive(Debug, Clone, PartialEq)]
pub struct Stone {
    /// The corners in order, anticlockwise, the first not repeated at the end.
    pub outline: Vec<Point>,
    /// What it does.
    pub role: Role,
    /// The course it begins in, counted up from 1 at the lowest ground; footing and copes
    /// are 0, and in a section what lies in a row of throughs.
    pub course: usize,
    /// How far it reaches into the wall from its face, square to the face.
    pub into: Length,
}

impl Stone {
    /// The area of the outline.
    pub fn area(&self) -> Area {
        square_metres(super::polygon::area(&self.corners()))
    }

    /// The corners in metres.
    pub(super) fn corners(&self) -> Vec<[f64; 2]> {
        self.outline.iter().map(|point| point.in_metres()).collect()
    }
}
