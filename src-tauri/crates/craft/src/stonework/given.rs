//! What is to be drawn: a face along the wall, or a cut across it, and the faults asked for.

use super::check::{Expectations, ExpectedRow};
use super::check_cut::ExpectedCut;
use super::levels::Levels;
use super::stone::Point;
use crate::quantity::{Length, Read, metres};
use crate::wall::{Batter, Footing, Section, Side};

/// What is nowhere higher than this, in metres, is no wall.
const LEAST_HEIGHT_M: f64 = 0.05;

/// How the drawn stretch ends.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum FaceEnd {
    /// A built end of long and short stones by turns; its edge leans in by so much.
    Head(Batter),
    /// Built up against a straight edge.
    Joined,
    /// Left stepped back, one along for one up, to be carried on.
    Raked,
    /// The wall goes on: stones are cut by the edge of the drawing. Also for a ring; where
    /// it is cut open, the two edges do not match stone for stone.
    OnAndOn,
}

/// A row of throughs, parallel to the top.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ThroughRow {
    /// From the underside of the cope down to the bed the throughs lie on.
    pub below_top: Length,
    /// Between the middles of neighbouring throughs.
    pub spacing: Length,
    /// One through along the wall.
    pub width: Length,
    /// One through upwards; it is fitted to the course it lies in.
    pub thickness: Length,
}

/// One face of a wall, seen from the side it looks to, unrolled on to a plane.
#[derive(Debug, Clone, PartialEq)]
pub struct Face {
    /// Along the wall.
    pub length: Length,
    /// The ground, in order of station.
    pub ground: Vec<Point>,
    /// The underside of the cope, in order of station; two points at one station are a
    /// step.
    pub top: Vec<Point>,
    /// The section at station 0, from which the lengths into the wall follow.
    pub section: Section,
    /// Rows of throughs.
    pub throughs: Vec<ThroughRow>,
    /// Height of the cope; zero for none.
    pub cope_height: Length,
    /// Thickness of one cope along the wall.
    pub cope_thickness: Length,
    /// Depth of the footing below the ground; zero for none.
    pub footing_depth: Length,
    /// At station 0 and at the far end.
    pub ends: [FaceEnd; 2],
    /// Height of a usual course: the lowest, and the one under the cope.
    pub course_heights: [Length; 2],
    /// Length along the face of a usual stone: the shortest and the longest.
    pub stone_lengths: [Length; 2],
    /// The same seed lays the same stones.
    pub seed: u64,
}

impl Face {
    /// What someone who looks this face over should know beforehand.
    pub fn expectations(&self) -> Expectations {
        let top = Levels::new(&self.top);
        let length = self.length.si();
        let rows = self.throughs.iter().map(|row| {
            let below = row.below_top.si();
            let [from, to] = self.reach(&top, below);
            ExpectedRow {
                line: top
                    .between(from, to.max(from))
                    .into_iter()
                    .map(|[x, y]| Point::metres([x, y - below]))
                    .collect(),
                spacing: row.spacing,
            }
        });
        Expectations {
            rows: if 0.0 < length {
                rows.collect()
            } else {
                Vec::new()
            },
        }
    }

    /// From where to where, in metres, the wall stands so far below its top: a raked end
    /// leaves a part out.
    pub(super) fn reach(&self, top: &Levels, below: f64) -> [f64; 2] {
        let ground = Levels::new(&self.ground);
        let length = self.length.si();
        let back = |at: f64, end: FaceEnd| match end {
            FaceEnd::Raked => (top.at(at) - below - ground.at(at)).max(0.0),
            _ => 0.0,
        };
        [back(0.0, self.ends[0]), length - back(length, self.ends[1])]
    }
}

/// A through where the wall is cut.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CutThrough {
    /// Height above the ground of the bed it lies on.
    pub bed: Length,
    /// How it lies.
    pub reach: CutReach,
}

/// How far a through reaches across the wall.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum CutReach {
    /// From face to face.
    Across,
    /// From this face as far in as this, measured level at its bed; behind its tail comes
    /// the other face.
    From(Side, Length),
}

/// A wall cut across. A retaining wall is one too, its bank side plumb.
#[derive(Debug, Clone, PartialEq)]
pub struct Crossing {
    /// Ground to the underside of the cope, and the two faces.
    pub section: Section,
    /// One through of each row, in any order.
    pub throughs: Vec<CutThrough>,
    /// A through's thickness, upwards.
    pub through_thickness: Length,
    /// How far a through sticks out of a face it comes to.
    pub through_projection: Length,
    /// The footing, if there is one.
    pub footing: Option<Footing>,
    /// Height of the cope; zero for none.
    pub cope_height: Length,
    /// Height of a usual course: the lowest, and the one under the cope.
    pub course_heights: [Length; 2],
    /// The same seed lays the same stones.
    pub seed: u64,
}

impl Crossing {
    /// What someone who looks this section over should know beforehand.
    pub fn expectations(&self) -> ExpectedCut {
        ExpectedCut {
            section: self.section,
            through_rows: self.throughs.iter().map(|one| one.bed).collect(),
        }
    }
}

/// A rule for the generator to break.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum PlantedKind {
    /// An upright joint that no stone crosses for three courses.
    RunningJoint,
    /// A stone laid with its length along the face.
    Traced,
    /// A through left out.
    MissingThrough,
    /// A hole in the hearting; in a section only.
    HollowHearting,
}

/// A fault asked for, and about where. Where it cannot be (too near an end, the ground or
/// the top), it goes to the nearest place that takes it, or is left out.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PlantedFault {
    /// What is wrong.
    pub kind: PlantedKind,
    /// About where.
    pub near: Point,
}

impl PlantedFault {
    /// A fault of this kind, so far along (or across) and so far up.
    pub fn new(kind: PlantedKind, x: Length, y: Length) -> Self {
        Self {
            kind,
            near: Point { x, y },
        }
    }

    pub(super) fn at(&self) -> [f64; 2] {
        self.near.in_metres()
    }
}

/// Whether the face can be drawn at all: sizes more than nothing, levels that are numbers,
/// and somewhere a top above the ground.
pub(super) fn is_sound(face: &Face) -> bool {
    let sizes = face.course_heights.iter().chain(&face.stone_lengths);
    let sized = sizes
        .chain([&face.length])
        .all(|size| metres(0.0) < *size && size.si().is_finite());
    let points = face.ground.iter().chain(&face.top);
    let known = points
        .flat_map(|point| point.in_metres())
        .all(f64::is_finite);
    if !sized || !known || face.ground.is_empty() || face.top.is_empty() {
        return false;
    }
    let length = face.length.si();
    let lowest = Levels::new(&face.ground).span(0.0, length)[0];
    lowest + LEAST_HEIGHT_M < Levels::new(&face.top).span(0.0, length)[1]
}
