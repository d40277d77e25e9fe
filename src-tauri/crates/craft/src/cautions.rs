//! What a responsible course warns of: the table's cautions that apply, and those that
//! follow from this plan's own numbers.

mod days;
mod hours;
mod stone;
mod wall;

pub use days::of_the_days;
pub use hours::{Hours, of_the_hours};
pub use stone::of_the_stone;
pub use wall::{Lie, of_the_wall};

use crate::conditions::Conditions;
use crate::course::Course;
use crate::pace::crew::{elbow_room, idle};
use crate::pace::{Binding, Kept, Sizing};
use crate::quantity::{Length, Read, show_count, show_length};
use crate::tables::Tables;

/// One caution as shown.
#[derive(Debug, Clone, PartialEq)]
pub struct Shown {
    /// A fixed word for programs.
    pub id: String,
    /// What to do or not to do.
    pub text: String,
    /// Who says so.
    pub source: String,
    /// Students are told.
    pub for_students: bool,
}

const COMMON: &str = "common practice, no source";

/// The table's cautions that apply to a course of which these conditions hold, in the
/// table's order.
pub fn general(tables: &Tables, conditions: &Conditions) -> Vec<Shown> {
    tables
        .cautions
        .iter()
        .filter(|caution| conditions.met(caution.applies))
        .map(|caution| Shown {
            id: caution.id.clone(),
            text: caution.text.clone(),
            source: caution.source.clone(),
            for_students: caution.for_students,
        })
        .collect()
}

/// The cautions that follow from the numbers of this plan.
pub fn of_this_plan(
    course: &Course,
    tables: &Tables,
    sizing: &Sizing,
    room: Length,
    ratio: f64,
    lower: Option<Length>,
) -> Vec<Shown> {
    let places = &tables.pace.places;
    let students = course.group.students.len();
    let mut cautions = Vec::new();
    let mut warn = |id: &str, text: String, source: &str| {
        cautions.push(Shown {
            id: id.to_owned(),
            text,
            source: source.to_owned(),
            for_students: false,
        });
    };
    if course.group.instructors == 0 {
        warn(
            "no-instructor",
            "Nobody is down to instruct: no one should build or handle bars without an instructor there.".to_owned(),
            COMMON,
        );
    } else if places.too_many_students < ratio {
        warn(
            "too-many-students",
            format!(
                "{ratio:.0} students to an instructor is too many to keep safe and to teach: 6 is good, 8 the limit for beginners. Bring another instructor or split the course."
            ),
            COMMON,
        );
    } else if places.students_per_instructor < ratio {
        warn(
            "many-students",
            format!(
                "{ratio:.0} students to an instructor: beyond 8 beginners wait for help. An assistant counts half."
            ),
            COMMON,
        );
    }
    if places.one_wall < u32::try_from(students).unwrap_or(u32::MAX) {
        warn(
            "two-walls",
            format!(
                "{students} students learn better at two walls with an instructor at each than at one."
            ),
            COMMON,
        );
    }
    for text in sizing_cautions(course, tables, sizing, room, lower) {
        warn(text.0, text.1, COMMON);
    }
    cautions
}

fn sizing_cautions(
    course: &Course,
    tables: &Tables,
    sizing: &Sizing,
    room: Length,
    lower: Option<Length>,
) -> Vec<(&'static str, String)> {
    let show = |length: Length| show_length(length, course.units);
    let mut texts = Vec::new();
    let (why, cure) = match sizing.kept {
        Some(_) => ("the line as given", cure(Binding::Given)),
        None => (reason(sizing.binding), cure(sizing.binding)),
    };
    if let Some(least) = sizing.falls_short_of() {
        texts.push((
            "short-of-elbow-room",
            format!(
                "The group needs {} of wall to stand at, and {} gives {}. {}",
                show(least.length),
                why,
                show(sizing.length),
                lower.map_or_else(
                    || cure.to_owned(),
                    |lower| format!(
                        "A shorter wall would rise no faster: it leaves people without a place. At {} high the group would finish {}; more hours or a footing dug beforehand would help too.",
                        show(lower),
                        show(least.length)
                    )
                )
            ),
        ));
    }
    texts.extend(
        sizing
            .kept
            .map(|kept| ("line-as-given", line_as_given(kept, sizing, course))),
    );
    if let Some(pace) = sizing
        .limits
        .iter()
        .find(|limit| limit.limit == Binding::Pace)
        && sizing.binding == Binding::Pace
        && sizing.kept.is_none()
        && pace.length < sizing.length
    {
        texts.push((
            "no-wall-in-the-time",
            "Not even the shortest wall keeps the chance wished for: give the course more hours, lower the wall, dig the footing beforehand, or wish for a smaller chance.".to_owned(),
        ));
    }
    let without = idle(&course.group, &tables.pace, room);
    if 0 < without && elbow_room(&course.group, &tables.pace).si() - room.si() > 1e-9 {
        texts.push((
            "people-without-a-place",
            format!(
                "{} will find no place at the wall at a time: give them hearting, sorting and copes to prepare, and change over often.",
                show_count(without, "student", "students")
            ),
        ));
    }
    texts
}

fn line_as_given(kept: Kept, sizing: &Sizing, course: &Course) -> String {
    let show = |length: Length| show_length(length, course.units);
    match kept {
        Kept::NoStraight { allowed } => format!(
            "The line has no straight that could be stretched or shortened, so it stays {} long; {} gives {}. Give it a straight, or give the length.",
            show(sizing.length),
            reason(sizing.binding),
            show(allowed)
        ),
        Kept::Closed { allowed } => format!(
            "The line comes round to where it began, so it stays {} long; {} gives {}. Change its stretches yourself to make it shorter or longer.",
            show(sizing.length),
            reason(sizing.binding),
            show(allowed)
        ),
        Kept::OthersTooLong { others, allowed } => format!(
            "The line stays {} long: without its last straight it takes {}, and {} gives {}. Shorten the other stretches, lower the wall or give the course more time.",
            show(sizing.length),
            show(others),
            reason(sizing.binding),
            show(allowed)
        ),
    }
}

fn reason(binding: Binding) -> &'static str {
    match binding {
        Binding::Pace => "what can be finished in the time",
        Binding::Stone => "the stone that can be had",
        Binding::Frames => "the stock of frames",
        Binding::Site => "the site",
        Binding::Given | Binding::ElbowRoom => "the length asked for",
    }
}

fn cure(binding: Binding) -> &'static str {
    match binding {
        Binding::Pace => {
            "A shorter wall would rise no faster, because it leaves people without a place: more hours, a footing dug beforehand or a much lower wall would cure it."
        }
        Binding::Stone => "More stone, a lower wall or a second, smaller wall would cure it.",
        Binding::Frames => "More frames, or building in bays (leapfrog = true), would cure it.",
        Binding::Site => "A second wall elsewhere on the site would cure it.",
        Binding::Given | Binding::ElbowRoom => "A longer wall or a second one would cure it.",
    }
}
