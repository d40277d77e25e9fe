//! The elevation in words: the same figures, for people who can't see it.

use crate::along::lie::Lie;
use crate::along::lie::level_shown;
use crate::along::line_row::line_said;
use crate::paper::scale::Scale;
use crate::paper::words::{self, shown};
use crate::turns::{come_to, comes_from};
use craft::course::{Course, WallKind};
use craft::plan::Plan;
use craft::quantity::Read;
use craft::wall::Top;

/// Everything the elevation shows.
pub(crate) fn elevation(
    plan: &Plan,
    course: &Course,
    lie: &Lie<'_>,
    scale: Scale,
    exaggerated: Option<String>,
) -> String {
    [
        seen(plan, course, lie, scale),
        exaggerated.unwrap_or_default(),
        line_said(plan, course).unwrap_or_default(),
        ends(plan),
        words::body(plan, course),
        levels(plan, course, lie),
        words::cope(plan, course),
        words::footing(plan, course),
        benched(course, lie),
        words::throughs(plan, course),
        turns(plan, course, lie),
        words::frames(plan, course),
        stints(plan, course),
    ]
    .into_iter()
    .filter(|sentence| !sentence.is_empty())
    .collect::<Vec<_>>()
    .join(" ")
}

fn seen(plan: &Plan, course: &Course, lie: &Lie<'_>, scale: Scale) -> String {
    let bends = plan
        .wall
        .line
        .stretches()
        .iter()
        .any(|one| one.bend.is_some());
    let unrolled = if bends {
        ", unrolled along the centre line"
    } else {
        ""
    };
    let (side, zero) = match &course.wall.kind {
        WallKind::Freestanding => (lie.side.word().to_owned(), "left"),
        WallKind::Retaining(bank) => (
            format!("open {}", lie.side.word()),
            if bank.side.word() == "right" {
                "right"
            } else {
                "left"
            },
        ),
    };
    format!(
        "The {side} face at 1:{}{unrolled}, station 0 at the {zero}, {} long.",
        scale.n(),
        shown(course, plan.sizing.length)
    )
}

fn ends(plan: &Plan) -> String {
    let said = |at: usize| {
        plan.ends.get(at).map(|end| {
            let lean = end
                .batter
                .n()
                .filter(|_| end.kind == craft::course::End::Head);
            match lean {
                Some(_) => format!(
                    "{}, battered {}",
                    words::end(end.kind),
                    words::batter(end.batter)
                ),
                None => words::end(end.kind).to_owned(),
            }
        })
    };
    match (said(0), said(1)) {
        (Some(start), Some(finish)) => {
            format!("At station 0: {start}. At the far end: {finish}.")
        }
        _ => "The wall is a closed ring: its far end is station 0 again.".to_owned(),
    }
}

/// Ground and top at every frame, where they change.
fn levels(plan: &Plan, course: &Course, lie: &Lie<'_>) -> String {
    if plan.wall.ground.is_level() {
        return String::new();
    }
    let top = match plan.wall.top {
        Top::Level => format!("The top is level at {}.", level_shown(course, lie.top(0.0))),
        Top::FollowsGround => "The top follows the ground.".to_owned(),
        Top::Stepped { .. } => stepped(course, lie),
    };
    let each: Vec<String> = plan
        .frames
        .rows
        .iter()
        .map(|row| {
            let at = row.station.si();
            let (ground, top) = (lie.ground(at), lie.top(at));
            let mut levels = level_shown(course, ground);
            let centre = shown(course, row.ground);
            if levels != centre {
                levels += &format!(" ({centre} on the centre line)");
            }
            format!(
                "at {} ground {levels}, top {}, {} high",
                shown(course, row.station),
                level_shown(course, top),
                level_shown(course, top - ground)
            )
        })
        .collect();
    format!(
        "These heights are those at station 0. {top} Levels at the {} face: {}.",
        lie.side.word(),
        each.join("; ")
    )
}

fn stepped(course: &Course, lie: &Lie<'_>) -> String {
    let steps: Vec<String> = lie
        .steps()
        .into_iter()
        .map(|(at, rise)| {
            let way = if rise < 0.0 { "down" } else { "up" };
            format!(
                "{} {way} at {}",
                level_shown(course, rise.abs()),
                level_shown(course, at)
            )
        })
        .collect();
    if steps.is_empty() {
        return "The top is level: no step is needed.".to_owned();
    }
    format!("The top steps {}.", words::list(&steps))
}

fn benched(course: &Course, lie: &Lie<'_>) -> String {
    if course.wall.footing.is_some() && lie.is_benched() {
        "The footing is benched where the ground is steeper than 1 in 10.".to_owned()
    } else {
        String::new()
    }
}

/// How many three-quarter throughs show their ends in the face that is looked at, and how many
/// there are; nothing where throughs cross the wall.
pub(crate) fn shown_throughs(
    plan: &Plan,
    course: &Course,
    lie: &Lie<'_>,
) -> Option<(usize, usize)> {
    let rows = 0..plan.stone.throughs.len();
    comes_from(plan, course, 0, 0)?;
    let here = rows.map(|row| come_to(plan, course, row, lie.side)).sum();
    let all = plan.stone.through_count();
    (0 < all).then_some((here, all))
}

fn turns(plan: &Plan, course: &Course, lie: &Lie<'_>) -> String {
    match shown_throughs(plan, course, lie) {
        Some((0, _)) => "In this face no through shows its end: they are dashed.".to_owned(),
        Some((here, all)) if here < all => format!(
            "{here} of the {all} come from this face and show their ends; those from the other \
             are dashed."
        ),
        _ => String::new(),
    }
}

fn stints(plan: &Plan, course: &Course) -> String {
    let stints: Vec<String> = plan
        .stints
        .iter()
        .map(|stint| {
            let names: Vec<String> = stint
                .members
                .iter()
                .map(|student| student.name.clone())
                .collect();
            format!(
                "{} from {} to {}",
                words::list(&names),
                shown(course, stint.from),
                shown(course, stint.to)
            )
        })
        .collect();
    format!("Stints: {}.", stints.join("; "))
}
