//! Sentences about the days: changes, cures, wishes that can't be had, what holds things up.

use crate::clock::Clock;
use craft::course::{Course, FrameKind};
use craft::pace::Cause;
use craft::pace::fixed::{Unmet, Why};
use craft::people;
use craft::plan::{Change, CureKind, Today};
use craft::quantity::show_length;
use craft::tables::Tables;

/// A stage's id.
pub(crate) fn stage_id(tables: &Tables, stage: usize) -> String {
    let stage = tables.stages.get(stage);
    stage.map(|stage| stage.id.clone()).unwrap_or_default()
}

/// A stage's name.
pub(crate) fn stage_name(tables: &Tables, stage: usize) -> String {
    let stage = tables.stages.get(stage);
    stage.map(|stage| stage.name.clone()).unwrap_or_default()
}

/// The name of a stage by its id; the id where the table has no such stage (any more).
pub(crate) fn stage_named(tables: &Tables, id: &str) -> String {
    let stage = tables.stages.iter().find(|stage| stage.id == id);
    stage.map_or_else(|| id.to_owned(), |stage| stage.name.clone())
}

fn lesson_title(tables: &Tables, lesson: usize) -> String {
    let lesson = tables.lessons.get(lesson);
    lesson
        .map(|lesson| lesson.title.clone())
        .unwrap_or_default()
}

/// A change to the course, as one would ask for it.
pub(crate) fn change(change: &Change, course: &Course, tables: &Tables) -> String {
    match change {
        Change::Beforehand(stage) => {
            format!("\"{}\" done before the course", stage_name(tables, *stage))
        }
        Change::EarlierStart(minutes) => {
            format!("every day to come begins {minutes} minutes earlier")
        }
        Change::LaterFinish(minutes) => format!("every day to come ends {minutes} minutes later"),
        Change::AnotherDay => "another day like the last".to_owned(),
        Change::AnotherInstructor => "another instructor".to_owned(),
        Change::WithoutLesson(lesson) => {
            format!("leave out the lesson \"{}\"", lesson_title(tables, *lesson))
        }
        Change::Lower(by) => format!(
            "a wall {} lower{}",
            show_length(*by, course.units),
            if course.wall.through_rows.is_empty() {
                ""
            } else {
                ", never below its throughs"
            }
        ),
        Change::WithoutCope => "leave the cope for later".to_owned(),
        Change::AnotherSet => "another set of frames".to_owned(),
        Change::Leapfrog => "move the frames along bay by bay".to_owned(),
        Change::AnotherLoad => "another load of stone".to_owned(),
    }
}

/// What would help on the day.
pub(crate) fn cure(kind: &CureKind, course: &Course, tables: &Tables) -> String {
    match kind {
        CureKind::MoveHelpers { bay } => {
            format!(
                "send helpers to bay {}, which is behind, until all bays are level",
                bay + 1
            )
        }
        CureKind::StopAtThroughs => {
            "stop at the throughs: level, tied across, safe to leave".to_owned()
        }
        CureKind::Shorten { to } => format!(
            "end the wall at the frame at {}: {} beyond it",
            show_length(*to, course.units),
            if course.wall.footing.is_some() {
                "no footing is in"
            } else {
                "nothing is laid"
            }
        ),
        CureKind::Change(it) => change(it, course, tables),
    }
}

/// What makes the wall safe to leave: as it stands, and as it will probably stand tonight.
pub(crate) fn safe(today: &Today, course: &Course, tables: &Tables) -> Vec<String> {
    let bars = course.frames.kind == FrameKind::Bar;
    let mut stages = today.stand_at.clone();
    stages.extend(
        today
            .tonight
            .filter(|stage| !today.stand_at.contains(stage)),
    );
    let rows = stages
        .into_iter()
        .filter_map(|stage| tables.stages.get(stage));
    rows.map(|stage| format!("{}: {}", stage.name, left_safe(&stage.if_left, bars)))
        .collect()
}

/// What makes the wall safe to leave, where frames are of bars or not: what stands in braces
/// is said of bars alone.
pub fn left_safe(if_left: &str, bars: bool) -> String {
    let mut said = String::new();
    let mut rest = if_left;
    while let Some((before, (of_bars, after))) = rest
        .split_once('{')
        .and_then(|(before, after)| Some((before, after.split_once('}')?)))
    {
        said.push_str(before);
        if bars {
            said.push_str(of_bars);
        }
        rest = after;
    }
    said + rest
}

/// A wish about a lesson that can't be had.
pub(crate) fn unmet(unmet: &Unmet, course: &Course, tables: &Tables, clock: &Clock) -> String {
    let Some(wish) = course.running.wishes.get(unmet.wish) else {
        return String::new();
    };
    let title = tables.lessons.iter().find(|it| it.id == wish.lesson);
    let title = title.map_or(wish.lesson.as_str(), |it| it.title.as_str());
    let at = wish.at.map_or("first thing".to_owned(), |at| {
        format!("at {}", clock.write_time(&at))
    });
    let why = match &unmet.why {
        Why::OutsideHours(hours) => format!(
            "building time that day is from {} to {}",
            clock.time(hours.from),
            clock.time(hours.to)
        ),
        Why::IntoBreak(name) => format!("it would run into the break \"{name}\""),
        Why::IntoWish(other) => format!("it would run into \"{other}\""),
        Why::NoRoom => "no stretch of that day is long enough for it".to_owned(),
        Why::LeftOut => "it is left out of the course".to_owned(),
        Why::GivenOn(day) => format!("it is given on day {} already", day + 1),
        Why::OpensWith(other) => format!("that day opens with \"{other}\", which says as much"),
        Why::NobodyThere => "nobody is there then".to_owned(),
    };
    format!(
        "\"{title}\" can't be given {at} on day {}: {why}.",
        wish.day + 1
    )
}

/// A wish about pairs that can't be had.
pub(crate) fn unmet_pair(unmet: &people::Unmet) -> String {
    match unmet {
        people::Unmet::Together(one, other) => {
            format!("{one} and {other} build together all the same: there was no other way.")
        }
        people::Unmet::Wish(who, names) => format!(
            "{who} would like to build with {}, and does not.",
            names.join(" or ")
        ),
    }
}

/// What held courses up.
pub(crate) fn cause(cause: Option<Cause>, tables: &Tables) -> String {
    match cause {
        None => "nothing: it went as usual or better".to_owned(),
        Some(Cause::Stage(stage)) => format!("\"{}\" went slowly", stage_name(tables, stage)),
        Some(Cause::Lesson(lesson)) => {
            format!(
                "waiting for the lesson \"{}\"",
                lesson_title(tables, lesson)
            )
        }
        Some(Cause::Break) => "a lesson had to wait for the other side of a break".to_owned(),
        Some(Cause::People) => "too few places at the wall, or too few who teach".to_owned(),
    }
}
