//! Timber frames in written figures: the cut list, the lumber to buy and how to cut it.

use crate::plan::timber_word;
use craft::plan::Plan;
use craft::quantity::{Length, Units, show_length, show_mark, show_share, show_small};
use craft::timber::{CutRow, Kind, Pattern};
use serde::Serialize;
use ts_rs::TS;

/// The timber frames and the lumber for them.
#[derive(Debug, Clone, Serialize, TS)]
#[ts(rename = "WrittenTimber")]
#[allow(missing_docs)]
pub struct Timber {
    /// `50 x 25 mm`.
    pub batten: String,
    pub cut_list: Vec<CutLine>,
    /// `6 of 2.40 m`.
    pub buy: Vec<String>,
    pub patterns: Vec<PatternLine>,
    pub bought: String,
    pub waste: String,
    /// How near to the least possible, as a sentence.
    pub least: String,
    /// Pieces longer than any batten, as a sentence; empty if there are none.
    pub too_long: String,
}

/// Like pieces.
#[derive(Debug, Clone, Serialize, TS)]
#[ts(rename = "WrittenCutLine")]
#[allow(missing_docs)]
pub struct CutLine {
    /// `A`, `B` and so on.
    pub mark: String,
    pub what: String,
    pub length: String,
    /// `9.5° both ends`, `square`.
    pub ends: String,
    pub count: usize,
    /// `all`, or the numbers of the frames.
    pub frames: String,
}

/// One way of cutting a batten.
#[derive(Debug, Clone, Serialize, TS)]
#[ts(rename = "WrittenPattern")]
#[allow(missing_docs)]
pub struct PatternLine {
    pub stock: String,
    pub times: usize,
    /// `2 of A, 1 of C`.
    pub pieces: String,
    pub offcut: String,
}

impl Timber {
    pub(super) fn of(plan: &Plan, units: Units) -> Option<Self> {
        let it = plan.timber.as_ref()?;
        let cutting = &it.cutting;
        let frames = plan.frames.rows.len();
        Some(Self {
            batten: match units {
                Units::Metric => format!(
                    "{:.0} × {:.0} mm",
                    it.timber.width.value * 1000.0,
                    it.timber.thickness.value * 1000.0
                ),
                Units::Imperial => format!(
                    "{} × {}",
                    show_mark(it.timber.width, units),
                    show_mark(it.timber.thickness, units)
                ),
            },
            cut_list: it
                .list
                .iter()
                .enumerate()
                .map(|(at, row)| cut_line(at, row, frames, units))
                .collect(),
            buy: cutting
                .buy
                .iter()
                .map(|buy| format!("{} of {}", buy.count, show_length(buy.stock, units)))
                .collect(),
            patterns: cutting
                .patterns
                .iter()
                .map(|pattern| pattern_line(pattern, units))
                .collect(),
            bought: show_length(cutting.bought, units),
            waste: show_share(cutting.waste_share()),
            least: if cutting.proved_least() {
                "No way of cutting needs less.".to_owned()
            } else {
                format!(
                    "At most {} more than the least possible.",
                    show_length(cutting.beyond_least(), units)
                )
            },
            too_long: too_long(&it.list, &cutting.too_long, units),
        })
    }
}

fn cut_line(at: usize, row: &CutRow, frames: usize, units: Units) -> CutLine {
    let of = row.frames();
    CutLine {
        mark: mark(at),
        what: timber_word(row.kind).to_owned(),
        length: show_mark(row.length, units),
        ends: ends(row),
        count: row.count,
        frames: if of.len() == frames {
            "all".to_owned()
        } else {
            let numbers: Vec<String> = of.iter().map(usize::to_string).collect();
            numbers.join(", ")
        },
    }
}

/// `A` to `Z`, then `AA`, `AB` and so on.
fn mark(at: usize) -> String {
    let letter = |at: usize| char::from(b'A' + u8::try_from(at % 26).unwrap_or_default());
    match at.checked_sub(26) {
        None => letter(at).to_string(),
        Some(beyond) => format!("{}{}", letter(beyond / 26), letter(beyond)),
    }
}

fn ends(row: &CutRow) -> String {
    let degrees = row.ends_degrees.map(|angle| format!("{angle:.1}°"));
    let square = "0.0°";
    match (&degrees, row.kind) {
        // A saw stops at about 50°; a brace is marked from the leg it lies on.
        (_, Kind::Brace) => "marked from the legs".to_owned(),
        ([a, b], _) if a == square && b == square => "square".to_owned(),
        ([a, b], _) if a == b => format!("{a} off square, both ends"),
        ([a, b], _) => format!("{a} and {b} off square"),
    }
}

fn pattern_line(pattern: &Pattern, units: Units) -> PatternLine {
    let pieces: Vec<String> = pattern
        .pieces
        .iter()
        .map(|share| format!("{} of {}", share.count, mark(share.row)))
        .collect();
    PatternLine {
        stock: show_length(pattern.stock, units),
        times: pattern.times,
        pieces: pieces.join(", "),
        offcut: show_small(pattern.offcut, units),
    }
}

fn too_long(list: &[CutRow], rows: &[usize], units: Units) -> String {
    let longest = rows
        .iter()
        .filter_map(|at| list.get(*at))
        .map(|row| row.length)
        .fold(
            Length::default(),
            |most, it| if most < it { it } else { most },
        );
    if rows.is_empty() {
        return String::new();
    }
    let marks: Vec<String> = rows.iter().map(|at| mark(*at)).collect();
    format!(
        "No batten is long enough for {}: one of at least {} is needed.",
        marks.join(", "),
        show_mark(longest, units)
    )
}
