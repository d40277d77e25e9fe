//! Cautions that follow from how this wall lies and how it is set out.

use super::{COMMON, Shown};
use crate::course::Course;
use crate::frames::{Fittings, Frames};
use crate::quantity::{Length, Read, metres, millimetres, show_length, show_mark, show_small};
use crate::retaining::{Retaining, Verdict};
use crate::tables::{RetainingTable, Tables};
use crate::wall::{Across, Piece, Top, Wall};

/// Ground steeper than 1 in this is benched under the footing (common practice, no source).
const BENCHED_FROM_ONE_IN: f64 = 10.0;
/// Heights that differ by more than this are worth a word (common practice, no source).
const HEIGHTS_DIFFER_M: f64 = 0.4;

/// What there is to look at.
#[derive(Debug, Clone, Copy)]
pub struct Lie<'a> {
    /// The wall as it stands.
    pub wall: &'a Wall,
    /// Its frames.
    pub frames: &'a Frames,
    /// What goes with them.
    pub fittings: &'a Fittings,
    /// The bank behind it.
    pub retaining: Option<&'a Retaining>,
}

/// All of them, those about a bank first.
pub fn of_the_wall(course: &Course, tables: &Tables, lie: Lie<'_>) -> Vec<Shown> {
    let mut cautions = Vec::new();
    if let Some(retaining) = lie.retaining {
        cautions.extend(about_a_bank(course, &tables.retaining, retaining));
    }
    let footing_source = tables.frames.footing_source.as_str();
    let found = [
        (little_grip(course, lie), footing_source),
        (far_off_the_curve(course, lie), COMMON),
        (rows_in_the_ground(course, lie.wall), COMMON),
        (heights_differ(course, lie.wall), COMMON),
        (steep_ground(course, lie.wall), COMMON),
        (top_bends_in_a_bay(course, lie), COMMON),
        (ring_does_not_meet(course, lie.wall), COMMON),
    ];
    cautions.extend(found.into_iter().filter_map(|(found, source)| {
        let (id, text) = found?;
        Some(shown(id, text, source))
    }));
    cautions
}

type Found = Option<(&'static str, String)>;

fn shown(id: &str, text: String, source: &str) -> Shown {
    Shown {
        id: id.to_owned(),
        text,
        source: source.to_owned(),
        for_students: false,
    }
}

fn about_a_bank(course: &Course, table: &RetainingTable, it: &Retaining) -> Vec<Shown> {
    let show = |length: Length| show_length(length, course.units);
    let mut cautions = Vec::new();
    if it.must_ask {
        let more = [
            (0.0 < it.bank.load_kpa, "carries a load above"),
            (it.given.near_boundary, "stands near a boundary"),
            (it.given.near_building, "stands near a building"),
        ];
        let more: String = more
            .iter()
            .filter(|(so, _)| *so)
            .map(|(_, what)| format!(" and {what}"))
            .collect();
        let why = format!(
            "This wall is {} from the bottom of its footing to its top where it is highest{more}",
            show(it.from_footing)
        );
        cautions.push(shown(
            "retaining-ask",
            format!("{why}. {}", table.ask),
            &table.ask_source,
        ));
    }
    let below = match it.verdict {
        Verdict::AboveBoth => None,
        Verdict::BelowOverturning => Some("against tipping over"),
        Verdict::BelowSliding => Some("against sliding"),
        Verdict::BelowBoth => Some("against tipping over and against sliding"),
    };
    if let Some(below) = below {
        cautions.push(shown(
            "retaining-check",
            format!(
                "By the teaching check this wall is below the usual safety of {} {below}: tipping {:.2}, sliding {:.2}. Make the base wider, lower the bank or drain it better, and ask a licensed engineer. Being above would be no approval either.",
                table.limits.overturning, it.check.overturning, it.check.sliding
            ),
            &table.ask_source,
        ));
    }
    if it.base_share < table.limits.base_share - 1e-9 {
        cautions.push(shown(
            "retaining-base",
            format!(
                "At the ground the wall is {:.0} % as wide as it is high; a retaining wall wants at least half its height.",
                it.base_share * 100.0
            ),
            COMMON,
        ));
    }
    cautions
}

fn little_grip(course: &Course, lie: Lie<'_>) -> Found {
    let trench = lie.fittings.trench.filter(|trench| trench.too_little)?;
    Some((
        "bar-grip",
        format!(
            "Only {} of each bar is below the bottom of the trench, where it grips: give the bars more in the ground, or set them before the trench is dug to its full depth.",
            show_mark(trench.grip, course.units)
        ),
    ))
}

fn far_off_the_curve(course: &Course, lie: Lie<'_>) -> Found {
    let show = |length: Length| show_mark(length, course.units);
    let curve = lie.fittings.curves.iter().find(|curve| curve.too_far)?;
    let bow = if curve.bow[0] < curve.bow[1] {
        curve.bow[1]
    } else {
        curve.bow[0]
    };
    Some((
        "curve-off-string",
        format!(
            "On the arc from {} to {} a straight string is {} off the outer face at the middle of a bay, more than the {} allowed. Set frames {} apart there, or bring the face out to a lath bent to the curve.",
            show(curve.from),
            show(curve.to),
            show_small(bow, course.units),
            show_small(course.frames.tolerance, course.units),
            show(curve.spacing_for_tolerance)
        ),
    ))
}

/// A row is counted all along the wall; where the ground has risen past it there is none.
fn rows_in_the_ground(course: &Course, wall: &Wall) -> Found {
    let show = |length: Length| show_length(length, course.units);
    let lowest = course
        .wall
        .through_rows
        .iter()
        .copied()
        .min_by(|a, b| a.si().total_cmp(&b.si()))?;
    let depth = wall.section.height() - lowest;
    let buried = wall
        .pieces()
        .into_iter()
        .find(|piece| piece.height.iter().any(|height| *height <= depth))?;
    Some((
        "row-in-the-ground",
        format!(
            "Between {} and {} the ground rises to the row of throughs at {}: leave those out there, or let the top follow the ground. They are counted all the same.",
            show(buried.from),
            show(buried.to),
            show(lowest)
        ),
    ))
}

fn heights_differ(course: &Course, wall: &Wall) -> Found {
    let show = |length: Length| show_length(length, course.units);
    let ends = |piece: &Piece| [(piece.from, piece.height[0]), (piece.to, piece.height[1])];
    let all: Vec<(Length, Length)> = wall.pieces().iter().flat_map(ends).collect();
    let by_height = |a: &&(Length, Length), b: &&(Length, Length)| a.1.si().total_cmp(&b.1.si());
    let (low, high) = (all.iter().min_by(by_height)?, all.iter().max_by(by_height)?);
    (metres(HEIGHTS_DIFFER_M) < high.1 - low.1).then(|| {
        (
            "heights-differ",
            format!(
                "Under this top the wall is {} high at {} and {} at {}: throughs and strings count from the ground at station 0. A top that follows the ground, or one in steps, would keep it alike.",
                show(high.1),
                show(high.0),
                show(low.1),
                show(low.0)
            ),
        )
    })
}

fn steep_ground(course: &Course, wall: &Wall) -> Found {
    let show = |length: Length| show_length(length, course.units);
    let fall = |piece: &Piece| {
        let ground = |end: usize| (piece.top[end] - piece.height[end]).si();
        ((ground(1) - ground(0)) / (piece.to - piece.from).si()).abs()
    };
    let pieces = wall.pieces();
    let steepest = pieces
        .iter()
        .max_by(|a, b| fall(a).total_cmp(&fall(b)))
        .filter(|piece| 1.0 / BENCHED_FROM_ONE_IN < fall(piece))?;
    Some((
        "steep-ground",
        format!(
            "From {} to {} the ground falls 1 in {:.1}: bench the footing in level steps, lay every bed level, and build from the low end.",
            show(steepest.from),
            show(steepest.to),
            1.0 / fall(steepest)
        ),
    ))
}

/// A string is straight from frame to frame, and a top that follows the ground is not where
/// the survey has a station between them.
fn top_bends_in_a_bay(course: &Course, lie: Lie<'_>) -> Found {
    if lie.wall.top != Top::FollowsGround {
        return None;
    }
    // Frames are set to the millimetre: no nearer to one than that, it stands there.
    let near = millimetres(1.0);
    let inside = |station: Length| {
        let bays = &lie.frames.bays;
        bays.iter()
            .any(|bay| bay.from + near < station && station + near < bay.to)
    };
    let bends: Vec<String> = lie
        .wall
        .ground
        .surveyed()
        .iter()
        .map(|survey| survey.station)
        .filter(|station| inside(*station))
        .map(|station| show_length(station, course.units))
        .collect();
    (!bends.is_empty()).then(|| {
        (
            "top-bends",
            format!(
                "The ground changes its slope between frames, at {}: the strings do not. End a stretch of the line there, so that a frame stands there.",
                bends.join(", ")
            ),
        )
    })
}

fn ring_does_not_meet(course: &Course, wall: &Wall) -> Found {
    let level = |station| wall.ground.level(Across::Centre, station);
    let (start, finish) = (level(metres(0.0)), level(wall.length()));
    let apart = (finish - start).si().abs();
    (wall.is_ring() && 0.01 < apart).then(|| {
        (
            "ring-levels",
            format!(
                "The line closes on itself, but its last level ({}) is not its first ({}): survey the last station again.",
                show_mark(finish, course.units),
                show_mark(start, course.units)
            ),
        )
    })
}
