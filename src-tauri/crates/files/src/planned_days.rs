//! The days of the example course as they are planned when something of them is changed.

use crate::Library;
use crate::course::CourseFile;
use craft::course::{Absence, Course};
use craft::pace::timetable::Of;
use craft::pace::{Binding, EntryKind};
use craft::plan::{Change, Plan, plan};
use craft::quantity::Read;
use craft::tables::Tables;
use std::sync::{Arc, LazyLock};

static TABLES: LazyLock<Arc<Tables>> =
    LazyLock::new(|| Library::built_in().expect("a sound library").tables);

fn example(more: &str) -> Course {
    let text = format!("{}\n{more}", Library::example(false));
    CourseFile::parse(&text).expect("a sound course").course
}

fn planned(course: &Course) -> Plan {
    plan(course, &TABLES).expect("a plan")
}

/// What a caution says; empty without it.
fn caution(plan: &Plan, id: &str) -> String {
    let found = plan.cautions.iter().find(|it| it.id == id);
    found.map_or_else(String::new, |it| it.text.clone())
}

fn wish(lesson: &str, day: usize, at: &str) -> String {
    format!("[[wish]]\nlesson = \"{lesson}\"\nday = {day}\nat = {at}:00\n")
}

#[test]
fn a_wish_that_holds_the_course_up_is_named_with_what_it_costs() {
    let plan = planned(&example(&wish("copes", 3, "14:00")));
    let text = caution(&plan, "wish-costs");
    assert!(
        text.starts_with("Giving \"Copes\" on day 3 at 14:00 holds the course up"),
        "{text}"
    );
    assert!(text.contains("m long instead of"), "{text}");
    let cope = TABLES.stages.iter().position(|it| it.id == "cope");
    let lesson = TABLES.lessons.iter().position(|it| it.id == "copes");
    let of = |of| plan.timetable.iter().position(|it| it.of == of);
    assert!(of(lesson.map(Of::Lesson)) < of(cope.map(Of::Stage)));
    let waits = |what: &str| what.starts_with("Waiting for \"Copes\"");
    assert!(plan.timetable.iter().any(|it| waits(&it.what)));
    assert_eq!(caution(&planned(&example("")), "wish-costs"), "");
}

#[test]
fn nobody_builds_in_the_dark_unless_lamps_are_lit() {
    let december = |more: &str| {
        let mut course = example(more);
        for (day, date) in course.days.iter_mut().zip(18..) {
            day.date = chrono::NaiveDate::from_ymd_opt(2027, 12, date).expect("a date");
            day.finish = chrono::NaiveTime::from_hms_opt(19, 0, 0).expect("a time");
        }
        course
    };
    let dark = planned(&december(""));
    let text = caution(&dark, "dark-hours");
    assert!(text.contains("of day 1 (dark 16:30 to 19:00)"), "{text}");
    // Dusk is at 16:30 on the first two days and a minute later on the third.
    let dusk = 16.5 * 60.0 + 1.0;
    for entry in dark
        .timetable
        .iter()
        .filter(|it| it.kind == EntryKind::Build)
    {
        assert!(entry.to % 1440.0 <= dusk, "{entry:?}");
    }
    let said = |what: &str| dark.timetable.iter().any(|it| it.what.contains(what));
    assert!(said("Too dark to build") && said("(dark from 16:30)"));
    let lit = planned(&december("[timetable]\nlamplight = true"));
    assert_eq!(caution(&lit, "dark-hours"), "");
    assert!(dark.sizing.length < lit.sizing.length);
}

#[test]
fn a_day_without_a_talk_about_safety_is_told() {
    let first = planned(&example(
        "[timetable]\nleave_out = [\"welcome-and-safety\"]",
    ));
    let text = caution(&first, "no-safety-talk-first");
    assert!(
        text.starts_with("Day 1 has no talk about safety at all"),
        "{text}"
    );
    let later = planned(&example(&wish("welcome-and-safety", 2, "10:00")));
    assert!(caution(&later, "no-safety-talk-first").starts_with("Day 1 has no talk"));
    let briefing = planned(&example("[timetable]\nleave_out = [\"day-briefing\"]"));
    let text = caution(&briefing, "no-safety-talk");
    assert!(
        text.starts_with("No talk about safety on days 2 and 3"),
        "{text}"
    );
    let usual = planned(&example(""));
    for id in [
        "no-safety-talk-first",
        "no-safety-talk",
        "no-break",
        "dark-hours",
        "nobody-there",
    ] {
        assert_eq!(caution(&usual, id), "", "{id}");
    }
}

#[test]
fn a_stretch_too_long_without_a_break_is_told() {
    let mut course = example("[timetable]\nshort_breaks = false");
    course.days[0].breaks.clear();
    let text = caution(&planned(&course), "no-break");
    assert!(
        text.starts_with(
            "Too long without a break: day 1 from 09:00 to 17:00 and day 3 from 13:30 to 16:00."
        ),
        "{text}"
    );
}

#[test]
fn a_day_with_nobody_there_says_so() {
    let mut course = example("");
    let who = course.group.students.iter();
    course.absences = who
        .map(|student| Absence {
            who: student.name.clone(),
            day: 1,
            from: None,
            until: None,
        })
        .collect();
    let plan = planned(&course);
    let day: Vec<&str> = plan
        .timetable
        .iter()
        .filter(|it| it.day == 1)
        .map(|it| it.what.as_str())
        .collect();
    assert_eq!(day, ["Nobody is there"]);
    let text = caution(&plan, "nobody-there");
    assert!(text.starts_with("Nobody is there all of day 2"), "{text}");
    assert_eq!(caution(&plan, "no-building"), "");
}

/// All days end from 14:00 to 18:00 by quarter hours. Where a break comes in it takes just what the
/// day has gained, and talks may have to wait for it: that costs one step of the length, 0.25 m, or
/// about 5 %, and the next quarter of an hour more than brings it back.
#[test]
fn more_hours_never_shorten_the_wall_by_more_than_a_step() {
    let mut longest: f64 = 0.0;
    let mut lengths = Vec::new();
    for quarter in 0..=16 {
        let mut course = example("");
        let late = 14 * 60 + 15 * quarter;
        for day in &mut course.days {
            day.breaks.truncate(2);
            day.finish = chrono::NaiveTime::from_hms_opt(late / 60, late % 60, 0).expect("a time");
        }
        course.venue.longest_wall = None;
        course.frames.in_stock = None;
        let plan = planned(&course);
        let mut limits = plan.sizing.limits.iter();
        let pace = limits.find(|it| it.limit == Binding::Pace).expect("pace");
        lengths.push(pace.length.si());
    }
    for length in &lengths {
        assert!(longest * 0.94 <= *length, "{lengths:?}");
        longest = longest.max(*length);
    }
}

/// What a change is said to allow is what the changed course is then given, within a few per cent.
#[test]
fn advice_holds_when_it_is_followed() {
    for (days, students) in [(1, 8), (2, 4), (3, 8)] {
        let mut course = example("");
        course.days.truncate(days);
        course.group.students.truncate(students);
        course.venue.longest_wall = None;
        course.frames.in_stock = None;
        for lift in planned(&course).advice.lifts {
            let mut followed = course.clone();
            match lift.change {
                Change::AnotherDay => {
                    let mut next = followed.days[days - 1].clone();
                    next.date = next.date.succ_opt().expect("a date");
                    followed.days.push(next);
                }
                Change::AnotherInstructor => followed.group.instructors += 1,
                Change::WithoutCope => followed.wall.cope_height = craft::quantity::metres(0.0),
                _ => continue,
            }
            let plan = planned(&followed);
            let mut limits = plan.sizing.limits.iter();
            let pace = limits.find(|it| it.limit == Binding::Pace).expect("pace");
            let (said, is) = (lift.length.si(), pace.length.si());
            assert!(
                (said - is).abs() < f64::max(0.04 * is, 0.05),
                "{days} {:?}: {said} {is}",
                lift.change
            );
        }
    }
}
