//! The wall as JSON: its measurements, its line and ends, what decided its length.

use super::bound_word;
use super::retaining::Retaining;
use craft::course::{Course, End, WallKind};
use craft::quantity::{Length, Read};
use craft::wall::{Bend, Side, Top};
use serde::Serialize;

/// The wall.
#[derive(Debug, Clone, Serialize)]
pub struct Wall {
    /// `freestanding` or `retaining`.
    pub kind: String,
    /// Along the centre line.
    pub length_m: f64,
    /// Ground to the underside of the cope.
    pub height_m: f64,
    /// Under the cope.
    pub top_width_m: f64,
    /// At the ground.
    pub base_width_m: f64,
    /// Of the body.
    pub section_area_m2: f64,
    /// Air included.
    pub body_volume_m3: f64,
    /// Air included.
    pub footing_volume_m3: f64,
    /// Air included.
    pub cope_volume_m3: f64,
    /// One face: length by height to the cope.
    pub face_area_m2: f64,
    /// What raked ends leave out of the body.
    pub raked_away_m3: f64,
    /// The n of 1 in n on the left; null for a plumb face.
    pub batter_left: Option<f64>,
    /// The same on the right.
    pub batter_right: Option<f64>,
    /// The stretches of its line in order.
    pub line: Vec<LineStretch>,
    /// It comes round to where it began, and has no ends.
    pub closed: bool,
    /// `level`, `follows ground` or `stepped`.
    pub top: String,
    /// Along the line and up and down: where anything changes.
    pub profile: Vec<ProfilePoint>,
    /// Both ends; none of a ring.
    pub ends: Vec<WallEnd>,
    /// The bank behind it; null where it stands free.
    pub retaining: Option<Retaining>,
    /// What decided the length.
    pub sizing: Sizing,
}

/// One stretch of the line.
#[derive(Debug, Clone, Serialize)]
pub struct LineStretch {
    /// Where it begins.
    pub from_m: f64,
    /// Where it ends.
    pub to_m: f64,
    /// Of the centre line; null for a straight.
    pub radius_m: Option<f64>,
    /// `left` or `right`; null for a straight.
    pub turn: Option<String>,
}

/// The wall at one station; where its top steps there are two.
#[derive(Debug, Clone, Serialize)]
pub struct ProfilePoint {
    /// Along the centre line.
    pub station_m: f64,
    /// Level of the ground on the centre line.
    pub ground_m: f64,
    /// Level of the underside of the cope.
    pub top_m: f64,
}

/// One end of the wall.
#[derive(Debug, Clone, Serialize)]
pub struct WallEnd {
    /// Along the centre line.
    pub station_m: f64,
    /// `head`, `joined` or `raked`.
    pub kind: String,
    /// Ground to the underside of the cope.
    pub height_m: f64,
    /// The n of the end's own 1 in n; null where it is plumb.
    pub batter: Option<f64>,
    /// End stones laid along the wall, both faces together.
    pub long_stones: usize,
    /// End stones laid across it.
    pub short_stones: usize,
    /// What its lean leaves out of the body.
    pub left_out_m3: f64,
}

/// What decided the length, and what had a say.
#[derive(Debug, Clone, Serialize)]
pub struct Sizing {
    /// `elbow room`, `pace`, `stone`, `frames`, `site` or `given`.
    pub binding: String,
    /// All limits.
    pub limits: Vec<Limit>,
}

/// One limit on the length.
#[derive(Debug, Clone, Serialize)]
pub struct Limit {
    /// The reason.
    pub limit: String,
    /// `least` or `most`.
    pub bound: String,
    /// Where it bites.
    pub length_m: f64,
}

impl Wall {
    pub(super) fn of(plan: &craft::plan::Plan, course: &Course) -> Self {
        let section = &plan.section;
        let raked = plan.ends.iter().filter(|end| end.kind == End::Raked);
        Self {
            kind: kind_word(&course.wall.kind).to_owned(),
            length_m: plan.sizing.length.si(),
            height_m: section.height().si(),
            top_width_m: section.top_width().si(),
            base_width_m: section.base_width().si(),
            section_area_m2: section.area().si(),
            body_volume_m3: plan.volumes.body.si(),
            footing_volume_m3: plan.volumes.footing.si(),
            cope_volume_m3: plan.volumes.cope.si(),
            face_area_m2: plan.volumes.face.si(),
            // A sum of nothing would be minus nothing.
            raked_away_m3: raked.fold(0.0, |sum, end| sum + end.left_out.si()),
            batter_left: section.batter(Side::Left).n(),
            batter_right: section.batter(Side::Right).n(),
            line: plan.wall.line.spans().map(LineStretch::of).collect(),
            closed: plan.wall.is_ring(),
            top: top_word(plan.wall.top).to_owned(),
            profile: profile(&plan.wall),
            ends: plan.ends.iter().map(WallEnd::of).collect(),
            retaining: plan.retaining.as_ref().map(Retaining::of),
            sizing: Sizing::of(&plan.sizing),
        }
    }
}

impl Sizing {
    fn of(sizing: &craft::pace::Sizing) -> Self {
        Self {
            binding: sizing.binding.word().to_owned(),
            limits: sizing
                .limits
                .iter()
                .map(|limit| Limit {
                    limit: limit.limit.word().to_owned(),
                    bound: bound_word(limit.bound).to_owned(),
                    length_m: limit.length.si(),
                })
                .collect(),
        }
    }
}

impl LineStretch {
    fn of((from, to, bend): (Length, Length, Option<Bend>)) -> Self {
        Self {
            from_m: from.si(),
            to_m: to.si(),
            radius_m: bend.map(|bend| bend.radius.si()),
            turn: bend.map(|bend| bend.turn.word().to_owned()),
        }
    }
}

impl WallEnd {
    fn of(end: &craft::wall::WallEnd) -> Self {
        Self {
            station_m: end.station.si(),
            kind: match end.kind {
                End::Head => "head",
                End::Joined => "joined",
                End::Raked => "raked",
            }
            .to_owned(),
            height_m: end.height.si(),
            batter: end.batter.n(),
            long_stones: end.stones.long,
            short_stones: end.stones.short,
            left_out_m3: end.left_out.si(),
        }
    }
}

fn profile(wall: &craft::wall::Wall) -> Vec<ProfilePoint> {
    let mut points: Vec<ProfilePoint> = Vec::new();
    for piece in wall.pieces() {
        let at = |station: Length, end: usize| ProfilePoint {
            station_m: station.si(),
            ground_m: (piece.top[end] - piece.height[end]).si(),
            top_m: piece.top[end].si(),
        };
        let (from, to) = (at(piece.from, 0), at(piece.to, 1));
        // Between two pieces the top is where it was, unless it steps.
        if points
            .last()
            .is_none_or(|last| 1e-9 < (last.top_m - from.top_m).abs())
        {
            points.push(from);
        }
        points.push(to);
    }
    points
}

/// The course file's word for what the wall is for.
fn kind_word(kind: &WallKind) -> &'static str {
    match kind {
        WallKind::Freestanding => "freestanding",
        WallKind::Retaining(_) => "retaining",
    }
}

fn top_word(top: Top) -> &'static str {
    match top {
        Top::Level => "level",
        Top::FollowsGround => "follows ground",
        Top::Stepped { .. } => "stepped",
    }
}
