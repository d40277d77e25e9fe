//! The wall cut across, in words, and the notes that stand under it.

use crate::across::bank::Bank;
use crate::across::cut::Cut;
use crate::paper::words::{self, shown};
use crate::turns::comes_from;
use craft::quantity::{Length, Read, metres};
use craft::timber::Part;
use craft::wall::Side;

/// The drawing in words.
pub(crate) fn description(cut: &Cut<'_>) -> String {
    let (plan, course) = (cut.plan, cut.course);
    let sentences = [
        format!(
            "Cross-section at 1:{}, seen looking along the wall from station 0.",
            cut.scale.n()
        ),
        words::body(plan, course),
        ground(cut),
        words::cope(plan, course),
        footing(cut),
        words::throughs(plan, course),
        tails(cut),
        frame(cut),
        words::strings(plan, course),
        cut.bank().map_or_else(String::new, |bank| behind(&bank)),
        "Inside are two faces of large stones with small hearting between them.".to_owned(),
    ];
    let said: Vec<String> = sentences.into_iter().filter(|it| !it.is_empty()).collect();
    said.join(" ")
}

/// The ground where it is not level across.
fn ground(cut: &Cut<'_>) -> String {
    if cut.is_level() {
        return String::new();
    }
    let course = cut.course;
    let levels = Side::BOTH.map(|side| {
        let level = cut.ground(side);
        let way = if level < 0.0 { "below" } else { "above" };
        format!(
            "{} {way} it at the {} face",
            shown(course, metres(level.abs())),
            side.word()
        )
    });
    let rises = cut.row().map_or_else(String::new, |row| {
        format!(
            "So the wall's top is {} above the ground on the left and {} on the right, and the \
             wall is {} wide from ground to ground. ",
            shown(course, row.left_rise),
            shown(course, row.right_rise),
            shown(course, row.base_width()),
        )
    });
    format!(
        "That is on the centre line; at this station the ground lies {}. {rises}Heights of \
         throughs and strings count from the ground on the centre line.",
        words::list(&levels)
    )
}

/// The trench, or that there is none.
fn footing(cut: &Cut<'_>) -> String {
    let Some(footing) = cut.course.wall.footing else {
        return "There is no footing: the wall stands on the ground.".to_owned();
    };
    let below = if cut.is_level() {
        ""
    } else {
        " below the ground on the centre line"
    };
    format!(
        "The footing lies in a trench {} deep{below} and {} wide, {} beyond each face.",
        shown(cut.course, footing.depth),
        shown(cut.course, trench_width(cut, footing.outset)),
        shown(cut.course, footing.outset),
    )
}

/// From edge to edge of the trench.
pub(crate) fn trench_width(cut: &Cut<'_>, outset: Length) -> Length {
    base_width(cut) + outset * 2.0
}

/// Between the faces at the ground, each at its own level.
pub(crate) fn base_width(cut: &Cut<'_>) -> Length {
    let base = cut.plan.section.base_width();
    cut.row().map_or(base, |row| row.base_width())
}

/// Where throughs end short of a face: which come from which, and what is behind them.
fn tails(cut: &Cut<'_>) -> String {
    let throughs = cut.throughs();
    let from = Side::BOTH.map(|side| {
        let here = throughs.iter().filter(|it| it.from == Some(side));
        let beds: Vec<String> = here.map(|it| shown(cut.course, metres(it.bed))).collect();
        (!beds.is_empty())
            .then(|| format!("from the {} face at {}", side.word(), words::list(&beds)))
    });
    let from: Vec<String> = from.into_iter().flatten().collect();
    if from.is_empty() {
        return String::new();
    }
    format!(
        "Where the wall is cut, throughs come {}; behind each tail the row is closed with face \
         stone and tight hearting.",
        words::list(&from)
    )
}

/// The frame, with its offsets.
fn frame(cut: &Cut<'_>) -> String {
    let course = cut.course;
    let Some(row) = cut.row() else {
        return String::new();
    };
    let offsets = format!(
        "{} left and {} right of the centre line",
        shown(course, row.left_offset),
        shown(course, row.right_offset),
    );
    let Some(timber) = &cut.timber else {
        return format!(
            "At the ground the bars stand {offsets}, {} of bar in the ground; the underside of \
             the board is the top of the wall.",
            shown(course, course.frames.embedment),
        );
    };
    let length = |part| {
        let piece = timber.piece(part);
        piece.map_or_else(String::new, |piece| shown(course, piece.length))
    };
    let lower = timber.piece(Part::LowerRail).map_or(
        "",
        |_| " Its lower rail and its brace cross the wall and are dashed.",
    );
    format!(
        "The frame is of battens {} by {}: at the ground the inner edges of its legs stand \
         {offsets}; its legs are {} and {} long, and the underside of its top rail, {} long, is \
         the top of the wall.{lower}",
        shown(course, timber.timber.width),
        shown(course, timber.timber.thickness),
        length(Part::LeftLeg),
        length(Part::RightLeg),
        length(Part::TopRail),
    )
}

/// What stands behind the back.
fn behind(bank: &Bank<'_>) -> String {
    let course = bank.cut.course;
    let bars = if bank.cut.timber.is_some() {
        "The leg at the back stands"
    } else {
        "The bar at the back stands"
    };
    format!(
        "The wall holds back a bank on the {}: the {} face is the front, the {} face the back. \
         Behind the back lies drainage stone {} thick, measured level, and behind that the \
         bank, which reaches {} above the ground in front and {}. Long stones are tied back \
         into the drainage stone. {bars} in the drainage stone and is set before the filling.",
        bank.side.word(),
        bank.side.other().word(),
        bank.side.word(),
        shown(course, bank.retaining.drainage),
        shown(course, bank.height()),
        slope(bank).unwrap_or_else(|| "is level there".to_owned()),
    )
}

/// `rises from there at 15 degrees`; nothing where it is level.
pub(crate) fn slope(bank: &Bank<'_>) -> Option<String> {
    let degrees = bank.retaining.bank.slope_degrees;
    (0.0 < degrees).then(|| format!("rises from there at {} degrees", short(degrees)))
}

/// A number of degrees as people write it: no more than a decimal, and none that says
/// nothing.
pub(crate) fn short(degrees: f64) -> String {
    format!("{}", (degrees * 10.0).round() / 10.0 + 0.0)
}

/// What stands under the drawing.
pub(crate) fn notes(cut: &Cut<'_>) -> Vec<String> {
    let (upright, across) = if cut.timber.is_some() {
        ("legs", "Top rail and legs come")
    } else {
        ("bars", "Board and bars come")
    };
    let mut notes = vec![format!(
        "Seen looking along the wall from station 0. Rings on the {upright}: string heights."
    )];
    let rows = &cut.plan.stone.throughs;
    if comes_from(cut.plan, cut.course, 0, 0).is_some() && rows.iter().any(|row| 1 < row.count) {
        notes.push("Three-quarter throughs: the next along comes from the other face.".to_owned());
    }
    if !cut.is_level() {
        notes.push(
            "Heights of throughs and strings count from the ground on the centre line.".to_owned(),
        );
    }
    if cut
        .timber
        .as_ref()
        .is_some_and(|it| it.piece(Part::LowerRail).is_some())
    {
        notes.push("Dashed across the wall: lower rail and brace of the frame.".to_owned());
    }
    if 0.0 < cut.course.wall.cope_height.si() {
        notes.push(format!("{across} off before the cope is set."));
    }
    notes
}
