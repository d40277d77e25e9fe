//! How stone is lifted on a course: places, lifts by stage, hands, bodies, and what is too heavy.

use crate::lifting::{Body, Grip, Heavy, PerMinute, Team};
use crate::quantity::Length;

/// What the lifting guide is worked out from, beside the two published guides.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct LiftingTable {
    /// The lifts of the work, in its order.
    pub lifts: Vec<StageLift>,
    /// How stone is held and moved.
    pub hands: HowLifted,
    /// A middling man.
    pub men: Body,
    /// A middling woman.
    pub women: Body,
    /// Who says so of both.
    pub body_source: String,
    /// A typical flat stone: along the face, into the wall, high; as a ratio.
    pub flat_stone: [f64; 3],
    /// Who says so.
    pub flat_stone_source: String,
    /// People together.
    pub team: Team,
    /// Who says so.
    pub team_source: String,
    /// What is moved without being lifted.
    pub heavy: Heavy,
    /// Who says so.
    pub heavy_source: String,
    /// What the guides leave out; to be shown wherever their figures are.
    pub limits: Vec<String>,
}

/// A place where stone is taken up or set down.
#[derive(Debug, Clone, PartialEq)]
pub struct LiftingPlace {
    /// The word other rows use.
    pub id: String,
    /// What a person reads after "from" or "to".
    pub name: String,
    /// Where the hands are.
    pub height: PlaceHeight,
    /// Who says so.
    pub source: String,
}

/// Where the hands are at a place.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum PlaceHeight {
    /// So far above the ground the feet stand on.
    AboveGround(Length),
    /// At the copes of this wall, whatever its height.
    Top,
}

/// One way a stone is lifted at a stage of the work.
#[derive(Debug, Clone, PartialEq)]
pub struct StageLift {
    /// The stage's id.
    pub stage: String,
    /// Where it is taken up.
    pub from: LiftingPlace,
    /// Where it is set down.
    pub to: LiftingPlace,
    /// How often one person does it.
    pub rate: PerMinute,
    /// Who says so.
    pub source: String,
}

/// How stone is held and moved, alike for all stages.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct HowLifted {
    /// From midway between the ankles to midway between the hands.
    pub reach: Length,
    /// How far to the side it is taken up or set down, in degrees.
    pub twist_degrees: f64,
    /// How well it is held.
    pub grip: Grip,
    /// Hours of lifting in a day, without the rest that would let them count as less.
    pub hours: f64,
    /// How far it is carried without a rest.
    pub carried: Length,
    /// Who says so.
    pub source: String,
}
