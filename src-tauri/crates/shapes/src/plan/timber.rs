//! Timber frames as JSON: the cut list, and the lumber to buy.

use craft::quantity::{Length, Read};
use craft::timber::{Kind, TimberPlan};
use serde::Serialize;

/// The timber frames and the lumber for them.
#[derive(Debug, Clone, Serialize)]
pub struct Timber {
    /// Of a batten's broad face.
    pub width_m: f64,
    /// Of a batten.
    pub thickness_m: f64,
    /// Like pieces of all frames together.
    pub cut_list: Vec<CutRow>,
    /// What to buy.
    pub buy: Vec<Buy>,
    /// How each batten is cut.
    pub patterns: Vec<Pattern>,
    /// All that is bought.
    pub bought_m: f64,
    /// All that ends up in frames.
    pub used_m: f64,
    /// No way of cutting can do with less than this.
    pub least_m: f64,
    /// What is bought is proved to be the least.
    pub proved_least: bool,
    /// Rows of the cut list longer than any batten.
    pub too_long: Vec<usize>,
}

/// Like pieces.
#[derive(Debug, Clone, Serialize)]
pub struct CutRow {
    /// `leg`, `rail` or `brace`.
    pub kind: String,
    /// Along its longest edge.
    pub length_m: f64,
    /// Off square, at each end.
    pub ends_degrees: [f64; 2],
    /// How many.
    pub count: usize,
    /// The frames they are for, counted from 1.
    pub frames: Vec<usize>,
}

/// Battens of one length.
#[derive(Debug, Clone, Serialize)]
pub struct Buy {
    /// Of one batten.
    pub stock_m: f64,
    /// How many.
    pub count: usize,
}

/// One way of cutting a batten.
#[derive(Debug, Clone, Serialize)]
pub struct Pattern {
    /// Of the batten.
    pub stock_m: f64,
    /// How many are cut so.
    pub times: usize,
    /// Row of the cut list, counted from 0, and how many of it.
    pub pieces: Vec<(usize, usize)>,
    /// What is left.
    pub offcut_m: f64,
}

/// The plain word for a piece.
pub(crate) fn kind_word(kind: Kind) -> &'static str {
    match kind {
        Kind::Leg => "leg",
        Kind::Rail => "rail",
        Kind::Brace => "brace",
    }
}

impl Timber {
    pub(super) fn of(it: &TimberPlan) -> Self {
        let cutting = &it.cutting;
        let m = |length: Length| length.si();
        Self {
            width_m: m(it.timber.width),
            thickness_m: m(it.timber.thickness),
            cut_list: it
                .list
                .iter()
                .map(|row| CutRow {
                    kind: kind_word(row.kind).to_owned(),
                    length_m: m(row.length),
                    ends_degrees: row.ends_degrees,
                    count: row.count,
                    frames: row.frames(),
                })
                .collect(),
            buy: cutting
                .buy
                .iter()
                .map(|buy| Buy {
                    stock_m: m(buy.stock),
                    count: buy.count,
                })
                .collect(),
            patterns: cutting
                .patterns
                .iter()
                .map(|pattern| Pattern {
                    stock_m: m(pattern.stock),
                    times: pattern.times,
                    pieces: pattern
                        .pieces
                        .iter()
                        .map(|share| (share.row, share.count))
                        .collect(),
                    offcut_m: m(pattern.offcut),
                })
                .collect(),
            bought_m: m(cutting.bought),
            used_m: m(cutting.used),
            least_m: m(cutting.least),
            proved_least: cutting.proved_least(),
            too_long: cutting.too_long.clone(),
        }
    }
}
