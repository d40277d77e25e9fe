//! How the days run, at the desk: what comes and goes leaves no trace, what is refused no change.

use super::*;
use crate::edits::Told;

pub(super) fn told<'a>(
    stage: &'a str,
    time: &'a str,
    bay: Option<usize>,
    done: &'a str,
) -> Told<'a> {
    Told {
        day: 0,
        time,
        stage,
        bay,
        done,
    }
}

fn standing(desk: &Desk) -> Option<shapes::written::Today> {
    desk.view().written.running.today
}

#[test]
fn what_is_told_counts_at_once_and_can_be_taken_back_or_undone() {
    let (_folder, _path, mut desk) = desk_with_file();
    assert!(standing(&desk).is_none());
    desk.tell(&told("sort", "11:00", None, "done"))
        .expect("told");
    desk.tell(&told("line", "11:20", None, "done"))
        .expect("told");
    desk.tell(&told("dig", "12:30", Some(1), "60 %"))
        .expect("told");
    let today = standing(&desk).expect("something was told");
    assert_eq!(today.now, "day 1, 12:30");
    assert_eq!(
        today.told[2],
        "day 1, 12:30: \"Dig the trench\", bay 2, 60 %"
    );
    let dig = today.stages.iter().find(|it| it.stage == "dig");
    let dig = dig.expect("there is digging");
    assert_eq!(dig.shares[..2], ["not begun", "60 %"]);
    assert!(!dig.done);

    desk.untell(2).expect("taken back");
    assert_eq!(standing(&desk).expect("told").told.len(), 2);
    for _ in 0..4 {
        desk.undo().expect("undone");
    }
    assert!(!desk.unsaved());
}

#[test]
fn what_can_not_be_is_refused_and_changes_nothing() {
    let (_folder, _path, mut desk) = desk_with_file();
    let refused = |desk: &mut Desk, it: Told<'_>| {
        let wrong = desk.tell(&it).expect_err("refused");
        assert!(!desk.unsaved());
        crate::shown::trouble(wrong)
    };
    let wrong = refused(&mut desk, told("dig", "12:30", None, "most"));
    assert_eq!(
        (wrong.code.as_str(), wrong.key.as_str()),
        ("not-typed", "done")
    );
    let wrong = refused(&mut desk, told("dig", "", None, "half"));
    assert_eq!(wrong.key, "time");
    let wrong = refused(&mut desk, told("dig", "03:00", None, "half"));
    assert_eq!(wrong.code, "outside-the-day");
    let wrong = refused(&mut desk, told("cope", "09:05", None, "done"));
    assert!(
        wrong.what.contains("can't have come so far"),
        "{}",
        wrong.what
    );
    let wrong = refused(&mut desk, told("dig", "12:30", Some(40), "half"));
    assert!(!wrong.cure.is_empty());
}

#[test]
fn a_lesson_is_moved_and_falls_back_without_a_trace() {
    let (_folder, _path, mut desk) = desk_with_file();
    let given = |desk: &Desk| {
        let view = desk.view();
        let it = view.plan.timetable.iter();
        let copes: Vec<_> = it
            .filter(|it| it.lesson.as_deref() == Some("copes"))
            .map(|it| (it.day, it.start.clone()))
            .collect();
        copes
    };
    let before = given(&desk);
    desk.wish("copes", Some(1), "10:00").expect("at a time");
    let moved = given(&desk);
    assert_eq!(moved.len(), 1);
    assert!(moved[0].1.starts_with("2027-04-24T10:00"), "{moved:?}");
    desk.wish("copes", Some(1), "").expect("first thing");
    assert_ne!(given(&desk), moved);
    assert!(desk.wish("copes", Some(1), "25:00").is_err());
    desk.wish("copes", None, "").expect("where it falls");
    assert_eq!(given(&desk), before);
    assert!(!desk.unsaved());
}

#[test]
fn rain_and_absences_come_and_go_without_a_trace() {
    let (_folder, _path, mut desk) = desk_with_file();
    desk.add_rain(0).expect("rain");
    desk.add_absence().expect("somebody away");
    let people = desk.view().written.running.people;
    assert_eq!(people.len(), 1);
    assert_eq!(people[0].day, 3);
    desk.remove_absence(0).expect("there again");
    desk.remove_rain(0, 0).expect("dry");
    assert!(!desk.unsaved());
    assert!(desk.add_rain(9).is_err());
}
