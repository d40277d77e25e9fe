//! One frame put together, in words, and the notes that stand under it.

use crate::across::cut::Cut;
use crate::across::section_words::{base_width, short};
use crate::paper::words::{self, shown};
use craft::course::End;
use craft::frames::{BarMarks, FrameRow, corner_diagonals};
use craft::quantity::{Length, Read, show_count};
use craft::timber::Part;
use craft::wall::{Batter, Side};

/// Marks that differ by less than this are cut and set alike.
const SAME_M: f64 = 0.0005;

/// Whether all frames are made and marked alike.
pub(crate) fn alike(rows: &[FrameRow]) -> bool {
    rows.windows(2).all(|pair| {
        Side::BOTH
            .iter()
            .all(|side| (pair[0].rise(*side) - pair[1].rise(*side)).si().abs() < SAME_M)
    })
}

/// The drawing in words.
pub(crate) fn description(cut: &Cut<'_>) -> String {
    let frame = match &cut.timber {
        Some(_) => timber(cut),
        None => bars(cut),
    };
    let mut sentences = vec![
        format!(
            "The frame at station 0, at 1:{}, seen looking along the wall.",
            cut.scale.n()
        ),
        frame,
        widths(cut),
    ];
    sentences.extend(notes(cut, false));
    sentences.retain(|sentence| !sentence.is_empty());
    sentences.join(" ")
}

fn widths(cut: &Cut<'_>) -> String {
    let Some(row) = cut.row() else {
        return String::new();
    };
    let (course, section) = (cut.course, &cut.plan.section);
    let under = if cut.timber.is_some() {
        "top rail"
    } else {
        "board"
    };
    let [from_left, from_right] =
        corner_diagonals(row, section.top_width()).map(|it| shown(course, it));
    let diagonals = if from_left == from_right {
        format!("both measure {from_left}")
    } else {
        format!("from the left foot {from_left}, from the right foot {from_right}")
    };
    let rises = if cut.is_level() {
        format!("{} above the ground, plumb", shown(course, row.left_rise))
    } else {
        format!(
            "{} above the ground on the left and {} on the right, plumb",
            shown(course, row.left_rise),
            shown(course, row.right_rise)
        )
    };
    format!(
        "Inside to inside it is {} wide at the ground and {} wide under the {under}, whose \
         underside lies {rises}. The diagonals from an inner foot at the ground to the far inner \
         corner under the {under}: {diagonals}.",
        shown(course, base_width(cut)),
        shown(course, section.top_width()),
    )
}

fn bars(cut: &Cut<'_>) -> String {
    let (course, plan) = (cut.course, cut.plan);
    let Some(bars) = &plan.frames.bars else {
        return String::new();
    };
    let long = match bars.chosen {
        Some(length) => format!("{} long", shown(course, length)),
        None => format!(
            "for which no stock length is long enough: {} is needed",
            shown(course, bars.needed)
        ),
    };
    let marked = |marks: &BarMarks| {
        format!(
            "{} in the ground, {} from there to the board and {} above it",
            shown(course, marks.in_ground),
            shown(course, marks.to_board),
            shown(course, marks.above)
        )
    };
    let [left, right] = Side::BOTH.map(|side| cut.marks(side).as_ref().map(marked));
    let marks = match (left, right) {
        (Some(left), Some(right)) if left == right => format!("along each bar {left}"),
        (Some(left), Some(right)) => {
            format!("along the left bar {left}; along the right bar {right}")
        }
        _ => String::new(),
    };
    let board = board(cut).map_or_else(String::new, |board| format!(" {board}"));
    format!(
        "Two bars of {}, {long}: {marks}. Each has a cap.{board}",
        course.frames.bar,
    )
}

/// The board and its eyes.
pub(crate) fn board(cut: &Cut<'_>) -> Option<String> {
    let course = cut.course;
    let board = cut.plan.fittings.board?;
    Some(format!(
        "The board is {} long, {} wide and {} thick; its eyes are {} apart from middle to \
         middle and {} across.",
        shown(course, board.length),
        shown(course, board.width),
        shown(course, board.thickness),
        shown(course, board.eyes),
        shown(course, board.eye),
    ))
}

/// `both leaning 1 in 6`.
fn leaning(cut: &Cut<'_>) -> String {
    let lean = |side| match cut.plan.section.batter(side) {
        batter if batter.n().is_none() => "plumb".to_owned(),
        batter => format!("leaning {}", words::batter(batter)),
    };
    let [left, right] = Side::BOTH.map(lean);
    if left == right {
        format!("both {left}")
    } else {
        format!("the left one {left}, the right one {right}")
    }
}

fn timber(cut: &Cut<'_>) -> String {
    let (course, Some(timber)) = (cut.course, &cut.timber) else {
        return String::new();
    };
    let names = [
        (Part::LeftLeg, "left leg"),
        (Part::RightLeg, "right leg"),
        (Part::TopRail, "top rail"),
        (Part::LowerRail, "lower rail"),
        (Part::Brace, "brace"),
    ];
    let pieces: Vec<String> = names
        .into_iter()
        .filter_map(|(part, name)| {
            let piece = timber.piece(part)?;
            let [low, high] = piece.ends_degrees.map(|end| short(end.abs()));
            let ends = match (low.as_str(), high.as_str()) {
                ("0", "0") => "ends square".to_owned(),
                _ if low == high => format!("ends {low} degrees off square"),
                _ => format!("ends {low} degrees and {high} degrees off square"),
            };
            Some(format!("{name} {}, {ends}", shown(course, piece.length)))
        })
        .collect();
    format!("A nailed frame: {}.", pieces.join("; "))
}

/// What stands under the drawing: all of it, or what can't be done without.
pub(crate) fn notes(cut: &Cut<'_>, few: bool) -> Vec<String> {
    let (upright, across) = if cut.timber.is_some() {
        ("legs", "top rail")
    } else {
        ("bars", "board")
    };
    let mut notes = vec![
        format!(
            "The inner faces of the {upright} are the faces of the wall: {}.",
            leaning(cut)
        ),
        format!(
            "Check: both diagonals, inner foot at the ground to far inner corner under the \
             {across}, must measure as figured."
        ),
        which(cut),
    ];
    notes.extend(stock(cut));
    notes.extend(footing(cut));
    if let Some(timber) = &cut.timber {
        notes.push(format!(
            "Battens {} by {}; dots are nails. Lengths are along the longest edge, angles off a \
             square cut.",
            shown(cut.course, timber.timber.width),
            shown(cut.course, timber.timber.thickness),
        ));
        notes.extend(timber.piece(Part::LowerRail).map(|_| {
            format!(
                "The lower rail's underside is {} above the higher ground.",
                shown(cut.course, timber.timber.lower_rail)
            )
        }));
    }
    if few {
        return notes;
    }
    if cut.timber.is_none() {
        notes.push(
            "Eyes are measured from middle to middle. Plain caps stop scratches, not impalement: \
             where anyone could fall on the bars, board them over or use caps made for it."
                .to_owned(),
        );
    }
    notes.extend(end_profiles(cut));
    notes
}

/// Which frame it is.
fn which(cut: &Cut<'_>) -> String {
    let rows = &cut.plan.frames.rows;
    match rows.len() {
        0 | 1 => "The only frame.".to_owned(),
        count if alike(rows) => format!("All {count} frames are alike."),
        count => format!("Frame 1 of {count}, at station 0. For the others see the table."),
    }
}

/// That no stock length does.
fn stock(cut: &Cut<'_>) -> Option<String> {
    let bars = cut.plan.frames.bars.as_ref()?;
    bars.chosen.is_none().then(|| {
        format!(
            "No stock length is long enough for all frames: {} is needed.",
            shown(cut.course, bars.needed)
        )
    })
}

/// Bars in a dug footing.
fn footing(cut: &Cut<'_>) -> Option<String> {
    let trench = cut.plan.fittings.trench?;
    let grip = shown(cut.course, trench.grip);
    let gap = if trench.through_footing {
        format!(
            "Leave a gap {} wide in the footing for each bar. ",
            shown(cut.course, trench.gap)
        )
    } else {
        String::new()
    };
    let enough = if trench.too_little {
        ", which is too little to stand"
    } else {
        ""
    };
    Some(format!(
        "{gap}Below the trench {grip} of bar grips{enough}."
    ))
}

/// Built ends have profiles of their own.
fn end_profiles(cut: &Cut<'_>) -> Option<String> {
    let count = cut.plan.frames.end_profiles;
    if count == 0 {
        return None;
    }
    let mut leans: Vec<(Batter, Length)> = cut
        .plan
        .ends
        .iter()
        .filter(|end| end.kind == End::Head)
        .map(|end| (end.batter, end.height))
        .collect();
    leans.dedup_by(|a, b| a.0 == b.0);
    let leans: Vec<String> = leans.iter().map(|(lean, _)| words::batter(*lean)).collect();
    let leans = if leans.is_empty() {
        String::new()
    } else {
        format!(" ({})", words::list(&leans))
    };
    let profiles = show_count(count, "end profile", "end profiles");
    let heads = if count == 1 {
        "the built end"
    } else {
        "the built ends"
    };
    Some(format!(
        "Besides the frames: {profiles} for {heads}{leans}."
    ))
}
