//! Stone as JSON: by kind, with its ranges and what they rest on.

use craft::course::StoneKind;
use craft::quantity::{Length, Read, in_tonnes};
use serde::Serialize;

/// The stone.
#[derive(Debug, Clone, Serialize)]
pub struct Stone {
    /// Of the solid stone.
    pub solid_density_kg_m3: f64,
    /// Where it comes from.
    pub density_source: String,
    /// Share of the wall that is air.
    pub voids: f64,
    /// Share of what is delivered that is not built in.
    pub waste: f64,
    /// In the finished wall.
    pub built_t: f64,
    /// The same with its range.
    pub built_range_t: Range,
    /// In one metre of it.
    pub built_t_per_m: f64,
    /// Still to be delivered.
    pub to_deliver_t: Range,
    /// Whole deliveries for the high figure.
    pub loads: Option<usize>,
    /// In the finished wall, by kind.
    pub by_kind: ByKind,
    /// Each kind with its range; these do not add up to the range of the whole.
    pub kinds: Vec<KindRange>,
    /// The figures all of it rests on.
    pub rests_on: Vec<RestsOn>,
    /// What an old wall that is stripped out gives; null if there is none.
    pub old_wall_t: Option<Range>,
    /// The pitch was built and taken down before: nothing is ordered.
    pub practice_pitch: bool,
    /// Stones that cross the wall.
    pub throughs: Throughs,
    /// The row on top.
    pub copes: Copes,
}

/// The 10th, 50th and 90th percentile.
#[derive(Debug, Clone, Serialize)]
pub struct Range {
    /// One in ten is below.
    pub low: f64,
    /// The middle.
    pub mid: f64,
    /// One in ten is above.
    pub high: f64,
}

/// Tonnes in the finished wall.
#[derive(Debug, Clone, Serialize)]
#[allow(missing_docs)]
pub struct ByKind {
    pub footing_t: f64,
    pub face_t: f64,
    pub hearting_t: f64,
    pub throughs_t: f64,
    pub copes_t: f64,
}

/// One kind of stone with its range.
#[derive(Debug, Clone, Serialize)]
pub struct KindRange {
    /// `footing`, `face`, `hearting`, `throughs` or `copes`.
    pub kind: String,
    /// In the finished wall.
    pub built_t: Range,
    /// Still to be delivered.
    pub to_deliver_t: Range,
}

/// An uncertain figure that the tonnage rests on.
#[derive(Debug, Clone, Serialize)]
pub struct RestsOn {
    /// A fixed word for programs.
    pub id: String,
    /// kg/m3 for `density`, else a share.
    pub centre: f64,
    /// One in ten is below.
    pub low: f64,
    /// One in ten is above.
    pub high: f64,
    /// Who says so.
    pub source: String,
}

/// Stones that cross the wall.
#[derive(Debug, Clone, Serialize)]
pub struct Throughs {
    /// In all rows.
    pub count: usize,
    /// Row by row.
    pub rows: Vec<ThroughRow>,
}

/// One row of throughs.
#[derive(Debug, Clone, Serialize)]
pub struct ThroughRow {
    /// Above the ground.
    pub height_m: f64,
    /// Of one through.
    pub length_m: f64,
    /// How many.
    pub count: usize,
    /// Of one through.
    pub mass_kg: f64,
}

/// The row on top.
#[derive(Debug, Clone, Serialize)]
pub struct Copes {
    /// How many stones.
    pub count: usize,
}

impl Stone {
    pub(super) fn of(stone: &craft::stone::Stone, length: Length) -> Self {
        let kind = |kind| in_tonnes(stone.kind(kind));
        Self {
            solid_density_kg_m3: stone.density.si(),
            density_source: stone.density_source.clone(),
            voids: stone.voids,
            waste: stone.waste,
            built_t: in_tonnes(stone.built()),
            built_t_per_m: in_tonnes(craft::stone::per_metre(stone, length)),
            built_range_t: Range::of(stone.built_range),
            to_deliver_t: Range::of(stone.to_deliver),
            kinds: stone.kinds.iter().map(KindRange::of).collect(),
            rests_on: stone.makeup.rests_on.iter().map(RestsOn::of).collect(),
            old_wall_t: stone.old_wall.map(Range::of),
            practice_pitch: stone.practice_pitch,
            loads: stone.loads,
            by_kind: ByKind {
                footing_t: kind(StoneKind::Footing),
                face_t: kind(StoneKind::Face),
                hearting_t: kind(StoneKind::Hearting),
                throughs_t: kind(StoneKind::Throughs),
                copes_t: kind(StoneKind::Copes),
            },
            throughs: Throughs {
                count: stone.through_count(),
                rows: stone
                    .throughs
                    .iter()
                    .map(|row| ThroughRow {
                        height_m: row.height.si(),
                        length_m: row.length.si(),
                        count: row.count,
                        mass_kg: row.mass.si(),
                    })
                    .collect(),
            },
            copes: Copes { count: stone.copes },
        }
    }
}

impl Range {
    /// In tonnes.
    fn of(range: craft::stone::Range) -> Self {
        Self {
            low: in_tonnes(range.low),
            mid: in_tonnes(range.mid),
            high: in_tonnes(range.high),
        }
    }
}

impl KindRange {
    fn of(kind: &craft::stone::KindRange) -> Self {
        Self {
            kind: kind.kind.word().to_owned(),
            built_t: Range::of(kind.built),
            to_deliver_t: Range::of(kind.to_deliver),
        }
    }
}

impl RestsOn {
    fn of(it: &craft::stone::Resting) -> Self {
        Self {
            id: it.id.to_owned(),
            centre: it.figure.centre,
            low: it.figure.low,
            high: it.figure.high,
            source: it.source.clone(),
        }
    }
}
