//! `told`: what has been built goes into the course file, and the answer comes back.

use super::desk::Desk;
use checks::courses::{changed, parsed, plain};
use checks::program::{Ran, run};
use serde_json::Value;

/// `coursewright told course.walling REST`, the file before and after.
fn told(desk: &Desk, rest: &str) -> Ran {
    let rest: Vec<&str> = rest.split_whitespace().collect();
    desk.call("told", &rest)
}

fn text(desk: &Desk) -> String {
    std::fs::read_to_string(desk.course()).expect("the course")
}

fn json(desk: &Desk) -> Value {
    let ran = desk.call("plan", &["--json"]);
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    serde_json::from_str(&ran.out).expect("JSON")
}

#[test]
fn a_report_goes_into_the_file_and_the_answer_is_that_of_the_plan() {
    let desk = Desk::with_course(&plain());
    let ran = told(&desk, "line --at 11:00");
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    assert!(
        ran.out.starts_with("Told: line done on day 1 at 11:00."),
        "{}",
        ran.out
    );
    let after = text(&desk);
    let added = "\n[[progress]]\nday = 1\ntime = 11:00:00\nstage = \"line\"\ndone = 1.0\n\
        wall = { length = \"6.00 m\", height = \"1.07 m\", cope_height = \"0.25 m\" }\n";
    assert_eq!(after, plain() + added);
    // What the answer says stands first in the plan as well.
    let answer = ran.out.split_once("\n\n").expect("an answer").1;
    let plan = desk.call("plan", &[]).out;
    let first = plan.find("On the day").expect("the day");
    assert!(first < plan.find("\nWall\n").expect("the wall"));
    assert!(plan.contains(answer), "{answer}\nis not in\n{plan}");
    let now = json(&desk)["today"]["now"].clone();
    assert_eq!(now, "2027-04-24T11:00:00+01:00");
}

/// The wall is made lower on the day: what was told of the higher one was more of this one.
#[test]
fn a_report_counts_of_the_wall_it_was_told_of() {
    let desk = Desk::with_course(&plain());
    assert_eq!(
        told(&desk, "first-lift --day 2 --at 10:30 --done 0.4").code,
        Some(0)
    );
    let was = json(&desk)["today"]["told"][0]["share"].clone();
    let lower = text(&desk).replacen("height = \"1.07 m\"", "height = \"0.92 m\"", 1);
    std::fs::write(desk.course(), lower).expect("written");
    assert_eq!(
        told(&desk, "first-lift --day 2 --at 12:15 --done 0.6").code,
        Some(0)
    );
    let now = json(&desk)["today"]["told"][0]["share"].clone();
    assert!(was.as_f64() < now.as_f64(), "{was} {now}");
}

/// Whatever rain or absence comes in later, the wall that is being built stays as long as it is.
#[test]
fn the_first_report_writes_down_a_length_that_was_left_open() {
    let open = changed(plain(), &[("length = \"6 m\"", "length = \"auto\"")]);
    let desk = Desk::with_course(&open);
    let length = json(&desk)["wall"]["length_m"].clone();
    let ran = told(&desk, "line --at 11:00");
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    assert!(
        ran.out.contains("its length is written down"),
        "{}",
        ran.out
    );
    assert!(!text(&desk).contains("length = \"auto\""));
    assert_eq!(json(&desk)["wall"]["length_m"], length);
    let ran = told(&desk, "dig --at 13:30");
    assert!(!ran.out.contains("written down"), "{}", ran.out);
}

#[test]
fn what_is_much_quicker_than_usual_is_asked_about() {
    let desk = Desk::with_course(&plain());
    let ran = told(&desk, "pin --at 15:30");
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    for words in ["times as quick as usual", "told FILE --take-back"] {
        assert!(ran.out.contains(words), "{}", ran.out);
    }
    let ran = told(&desk, "--take-back");
    assert!(!ran.out.contains("as quick as usual"), "{}", ran.out);
}

#[test]
fn day_bay_and_share_are_taken_as_typed() {
    let desk = Desk::with_course(&plain());
    for (rest, said) in [
        ("line --at 11:00", "line done on day 1 at 11:00"),
        (
            "dig --at 12:15 --bay 1 --done 60%",
            "dig, bay 1 60 % done on day 1 at 12:15",
        ),
        (
            "dig --at 12:30:00 --bay 2 --done 0.25",
            "dig, bay 2 25 % done on day 1 at 12:30",
        ),
        ("dig --at 10:00 --day 2", "dig done on day 2 at 10:00"),
        // The day of the last report, where none is said.
        ("frames --at 11:30", "frames done on day 2 at 11:30"),
    ] {
        let ran = told(&desk, rest);
        assert_eq!(ran.code, Some(0), "{rest}: {}", ran.err);
        assert!(
            ran.out.starts_with(&format!("Told: {said}.")),
            "{}",
            ran.out
        );
    }
    let reports = parsed(&text(&desk)).course.running.progress;
    let shares: Vec<_> = reports.iter().map(|it| (it.day, it.bay, it.done)).collect();
    let all = [
        (0, None, 1.0),
        (0, Some(0), 0.6),
        (0, Some(1), 0.25),
        (1, None, 1.0),
        (1, None, 1.0),
    ];
    assert_eq!(shares, all);
}

#[test]
fn the_last_report_is_taken_back_until_there_is_none() {
    let desk = Desk::with_course(&plain());
    for rest in ["line --at 11:00", "dig --at 13:30"] {
        assert_eq!(told(&desk, rest).code, Some(0));
    }
    let ran = told(&desk, "--take-back");
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    assert!(
        ran.out
            .starts_with("Taken back: dig done on day 1 at 13:30."),
        "{}",
        ran.out
    );
    assert!(
        ran.out.contains("On the day, as told up to day 1, 11:00"),
        "{}",
        ran.out
    );
    let ran = told(&desk, "--take-back");
    assert!(ran.out.contains("Nothing is told of it now"), "{}", ran.out);
    assert_eq!(text(&desk), plain());
    let ran = told(&desk, "--take-back");
    assert_eq!(ran.code, Some(2));
    assert!(
        ran.err.starts_with("there is no report to take back"),
        "{}",
        ran.err
    );
}

/// What was typed is at fault, so no line of the file is named, and the file stays as it was.
#[test]
fn what_can_not_be_is_refused_and_nothing_is_written() {
    for (rest, what, cure) in [
        (
            "footings --at 11:00",
            "\"footings\" is not a stage",
            "did you mean \"footing\"?",
        ),
        // Strip-out is a stage, but there is no old wall here.
        (
            "strip-out --at 11:00",
            "not a stage this course has work for",
            "there are: sort, line",
        ),
        (
            "line --at 08:00",
            "08:00:00 is outside day 1, 09:00:00 to 16:30:00",
            "give a time of that day",
        ),
        (
            "line --at 11:00 --day 3",
            "there is no day 3; the course has 2",
            "count the course days from 1",
        ),
        (
            "dig --at 12:00 --bay 7",
            "the wall has 2 bays",
            "count the bays from 1 to 2, or leave it out for all",
        ),
        (
            "footing --at 09:20",
            "can't have come so far in 0 minutes of building",
            "correct the time, the stage or the share done",
        ),
        (
            "line --at noon",
            "invalid value 'noon'",
            "write a time of day as 11:40",
        ),
        (
            "line --at 11:00 --done 60",
            "invalid value '60'",
            "60% or as 0.6",
        ),
        (
            "line --at 11:00 --bay 0",
            "invalid value '0'",
            "count from 1",
        ),
        ("line", "--at", "Usage"),
        ("", "--at", "Usage"),
        (
            "line --at 11:00 --take-back",
            "cannot be used with",
            "Usage",
        ),
    ] {
        let desk = Desk::with_course(&plain());
        let ran = told(&desk, rest);
        assert_eq!(ran.code, Some(2), "{rest}: {}", ran.out);
        for words in [what, cure] {
            assert!(
                ran.err.contains(words),
                "{rest}: no {words:?} in\n{}",
                ran.err
            );
        }
        assert!(
            ran.out.is_empty() && !ran.err.contains(".walling:"),
            "{rest}: {}",
            ran.err
        );
        assert_eq!(text(&desk), plain(), "{rest}");
        assert_eq!(desk.names(), ["course.walling"], "{rest}");
    }
}

#[test]
fn a_file_with_a_mistake_of_its_own_is_refused_with_its_line() {
    let wrong = changed(plain(), &[("height = \"1.07 m\"", "hieght = \"1.07 m\"")]);
    let desk = Desk::with_course(&wrong);
    let ran = told(&desk, "line --at 11:00");
    assert_eq!(ran.code, Some(2));
    assert!(ran.err.contains("course.walling:36:1: "), "{}", ran.err);
    assert_eq!(text(&desk), wrong);
}

/// Written by hand, the report stands in the file and so its line is named.
#[test]
fn a_report_in_the_file_that_was_too_quick_is_refused_at_its_time() {
    let report = "[[progress]]\nday = 1\ntime = 09:20:00\nstage = \"footing\"\n";
    let desk = Desk::with_course(&(plain() + report));
    let line = plain().lines().count() + 3;
    for (call, rest) in [("plan", &[][..]), ("told", &["dig", "--at", "11:00"])] {
        let ran = desk.call(call, rest);
        assert_eq!(ran.code, Some(2), "{call}");
        let place = format!("course.walling:{line}:1: progress 1.time: the stage \"footing\"");
        assert!(ran.err.contains(&place), "{}", ran.err);
    }
}

/// A chance from here below the wish is something to do; one that has become good is not.
#[test]
fn check_goes_by_the_chance_from_where_the_wall_stands() {
    let poor = changed(plain(), &[("length = \"6 m\"", "length = \"2 m\"")]);
    let desk = Desk::with_course(&poor);
    let before = desk.call("check", &[]).out;
    assert!(before.contains("The chance of finishing is"), "{before}");
    assert_eq!(told(&desk, "line --at 16:30").code, Some(0));
    let after = desk.call("check", &[]).out;
    assert!(
        after.contains("From here the chance of finishing is"),
        "{after}"
    );
    for (stage, at) in [
        ("footing", "10:45"),
        ("first-lift", "11:45"),
        ("second-lift", "13:30"),
        ("pin", "16:00"),
    ] {
        let ran = told(&desk, &format!("{stage} --day 2 --at {at}"));
        assert_eq!(ran.code, Some(0), "{stage}: {}", ran.err);
    }
    let after = desk.call("check", &[]).out;
    assert!(!after.contains("chance of finishing"), "{after}");
}

#[test]
fn help_says_how_to_tell() {
    let ran = run(&["told", "--help"]);
    for words in ["--at", "--bay", "--done", "--take-back", "footing"] {
        assert!(ran.out.contains(words), "no {words} in\n{}", ran.out);
    }
}
