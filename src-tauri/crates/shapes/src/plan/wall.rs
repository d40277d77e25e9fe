//! The wall and its setting-out as JSON.

use super::bound_word;
use craft::quantity::Read;
use craft::wall::Side;
use serde::Serialize;
use ts_rs::TS;

/// The wall.
#[derive(Debug, Clone, Serialize, TS)]
pub struct Wall {
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
    /// What decided the length.
    pub sizing: Sizing,
}

/// What decided the length, and what had a say.
#[derive(Debug, Clone, Serialize, TS)]
pub struct Sizing {
    /// `elbow room`, `pace`, `stone`, `frames`, `site` or `given`.
    pub binding: String,
    /// All limits.
    pub limits: Vec<Limit>,
}

/// One limit on the length.
#[derive(Debug, Clone, Serialize, TS)]
pub struct Limit {
    /// The reason.
    pub limit: String,
    /// `least` or `most`.
    pub bound: String,
    /// Where it bites.
    pub length_m: f64,
}

/// The setting-out.
#[derive(Debug, Clone, Serialize, TS)]
pub struct Frames {
    /// Frames the line takes.
    pub count: usize,
    /// Sets to bring.
    pub sets: usize,
    /// Frames missing; null if nobody has counted.
    pub short: Option<usize>,
    /// One per built end, apart from the frames.
    pub end_profiles: usize,
    /// The longest distance between neighbours.
    pub bay_m: f64,
    /// One row per frame, in order of station.
    pub rows: Vec<FrameRow>,
    /// The bars.
    pub bars: Bars,
    /// One per bar.
    pub caps: usize,
    /// The leapfrog, when fewer frames are in stock than stations.
    pub moves: Vec<Move>,
    /// String heights from the ground up.
    pub strings: Vec<StringHeight>,
}

/// One frame.
#[derive(Debug, Clone, Serialize, TS)]
pub struct FrameRow {
    /// Along the centre line.
    pub station_m: f64,
    /// Level of the ground on the centre line.
    pub ground_m: f64,
    /// Ground to the underside of the board, on the centre line.
    pub height_m: f64,
    /// Between the bars at the ground.
    pub base_width_m: f64,
    /// Centre line to the inner face of the left bar at the ground.
    pub left_offset_m: f64,
    /// The same on the right.
    pub right_offset_m: f64,
    /// Ground to the underside of the board at the left bar, plumb.
    pub left_rise_m: f64,
    /// The same on the right.
    pub right_rise_m: f64,
}

/// The bars of all frames.
#[derive(Debug, Clone, Serialize, TS)]
pub struct Bars {
    /// Two to a frame.
    pub count: usize,
    /// The stock length chosen; null if none is long enough.
    pub length_m: Option<f64>,
    /// The shortest that would do.
    pub needed_length_m: f64,
    /// Nominal.
    pub diameter_mm: f64,
    /// All bars together.
    pub mass_kg: Option<f64>,
}

/// One move of the leapfrog.
#[derive(Debug, Clone, Serialize, TS)]
pub struct Move {
    /// The frame, counted from 1 at station 0.
    pub frame: usize,
    /// Where it stood.
    pub from_m: f64,
    /// Where it goes.
    pub to_m: f64,
    /// The wall stands to its full height up to here before the frame is drawn.
    pub built_to_m: f64,
}

/// A height of the string.
#[derive(Debug, Clone, Serialize, TS)]
pub struct StringHeight {
    /// Above the ground at station 0.
    pub height_m: f64,
    /// Between the faces there.
    pub width_m: f64,
}

impl Wall {
    pub(super) fn of(plan: &craft::plan::Plan) -> Self {
        let section = &plan.section;
        Self {
            length_m: plan.sizing.length.si(),
            height_m: section.height().si(),
            top_width_m: section.top_width().si(),
            base_width_m: section.base_width().si(),
            section_area_m2: section.area().si(),
            body_volume_m3: plan.volumes.body.si(),
            footing_volume_m3: plan.volumes.footing.si(),
            cope_volume_m3: plan.volumes.cope.si(),
            face_area_m2: plan.volumes.face.si(),
            raked_away_m3: plan.raked_away.si(),
            batter_left: section.batter(Side::Left).n(),
            batter_right: section.batter(Side::Right).n(),
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

impl Frames {
    pub(super) fn of(frames: &craft::frames::Frames) -> Self {
        Self {
            count: frames.rows.len(),
            sets: frames.sets,
            short: frames.short,
            end_profiles: frames.end_profiles,
            bay_m: frames.bay.si(),
            rows: frames.rows.iter().map(FrameRow::of).collect(),
            bars: Bars {
                count: frames.bars.count,
                length_m: frames.bars.chosen.map(Read::si),
                needed_length_m: frames.bars.needed.si(),
                diameter_mm: frames.bars.diameter.si() * 1000.0,
                mass_kg: frames.bars.mass.map(Read::si),
            },
            caps: frames.bars.count,
            moves: frames
                .moves
                .iter()
                .map(|one| Move {
                    frame: one.frame,
                    from_m: one.from.si(),
                    to_m: one.to.si(),
                    built_to_m: one.built_to.si(),
                })
                .collect(),
            strings: frames
                .strings
                .iter()
                .map(|one| StringHeight {
                    height_m: one.height.si(),
                    width_m: one.width.si(),
                })
                .collect(),
        }
    }
}

impl FrameRow {
    fn of(row: &craft::frames::FrameRow) -> Self {
        Self {
            station_m: row.station.si(),
            ground_m: row.ground.si(),
            height_m: row.height.si(),
            base_width_m: row.base_width().si(),
            left_offset_m: row.left_offset.si(),
            right_offset_m: row.right_offset.si(),
            left_rise_m: row.left_rise.si(),
            right_rise_m: row.right_rise.si(),
        }
    }
}
