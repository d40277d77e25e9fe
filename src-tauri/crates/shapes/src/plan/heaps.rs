//! Where the stone lies, as JSON.

use craft::heaps::Heap as Lying;
use craft::quantity::Read;
use craft::wall::Side;
use serde::Serialize;

/// Heaps along the wall; stations along the line, offsets from its centre.
#[derive(Debug, Clone, Serialize)]
pub struct Heaps {
    /// Row by row from the wall outwards.
    pub heaps: Vec<Heap>,
    /// The middle of each barrow way, as a station.
    pub ways_m: Vec<f64>,
    /// Tonnes for which there is no room within reach.
    pub waiting_t: f64,
    /// The room all of it takes, along the first direction of the line and across it.
    pub ground_m: [f64; 2],
    /// The farthest a barrow goes from the tip; null where nothing is tipped.
    pub longest_run_m: Option<f64>,
}

/// One heap.
#[derive(Debug, Clone, Serialize)]
#[allow(missing_docs)]
pub struct Heap {
    pub kind: String,
    /// `left` or `right`, looking from station 0.
    pub side: String,
    pub from_m: f64,
    pub to_m: f64,
    /// Centre line to its near edge.
    pub near_m: f64,
    /// Centre line to its far edge.
    pub far_m: f64,
    pub height_m: f64,
    /// As it lies, air included.
    pub volume_m3: f64,
    pub mass_kg: f64,
}

impl Heaps {
    pub(super) fn of(heaps: &craft::heaps::Heaps) -> Self {
        Self {
            heaps: heaps.heaps.iter().map(Heap::of).collect(),
            ways_m: heaps.ways.iter().map(|way| way.station.si()).collect(),
            waiting_t: heaps.waiting.iter().map(|it| it.mass.si() / 1000.0).sum(),
            ground_m: heaps.ground.map(Read::si),
            longest_run_m: heaps.longest_run.map(Read::si),
        }
    }
}

impl Heap {
    fn of(heap: &Lying) -> Self {
        Self {
            kind: heap.kind.word().to_owned(),
            side: match heap.side {
                Side::Left => "left",
                Side::Right => "right",
            }
            .to_owned(),
            from_m: heap.from.si(),
            to_m: heap.to.si(),
            near_m: heap.near.si(),
            far_m: heap.far.si(),
            height_m: heap.height.si(),
            volume_m3: heap.volume.si(),
            mass_kg: heap.mass.si(),
        }
    }
}
