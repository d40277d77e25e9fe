//! The days as text: weather, wishes, people, and days that no course can be held on.

use super::desk::Desk;
use checks::courses::{changed, plain, planned, with};
use files::Library;

const LUNCH: &str = "breaks = [ { name = \"Lunch\", start = 12:30:00, minutes = 45 } ]\n";

fn plan(text: &str) -> String {
    let ran = Desk::with_course(text).call("plan", &[]);
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    ran.out
}

#[test]
fn the_plan_tells_all_that_is_known_of_the_days() {
    let weather = "weather = { high = \"33 C\", low = \"16 C\", humidity = 0.7, wind = \"10 km/h\", full_sun = true }\n";
    let text = with(&[
        (LUNCH, &format!("{weather}{LUNCH}")),
        ("length = \"6 m\"", "length = \"auto\""),
    ]) + "[[wish]]\nlesson = \"copes\"\nday = 1\nat = 12:20:00\n\
          [[absence]]\nwho = \"Student 3\"\nday = 2\n";
    let (shown, written) = (plan(&text), planned(&text).written);
    let running = &written.running;
    let day = &running.weather[0];
    let people = &running.people[0];
    let mut words: Vec<&str> = vec![
        &running.throughs,
        "Wishes that can't be had",
        "Who does what",
    ];
    words.extend(day.figures.iter().chain(&day.asks).map(String::as_str));
    words.extend(people.away.iter().chain(&people.stints).map(String::as_str));
    words.extend(running.unmet.iter().map(String::as_str));
    words.extend(running.holdups.iter().take(4).map(|it| it.what.as_str()));
    words.extend(running.lifts.iter().map(|it| it.what.as_str()));
    words.extend(running.rotation.iter().map(|it| it.stage.as_str()));
    assert_eq!(running.unmet.len(), 1);
    for word in words {
        assert!(
            !word.is_empty() && shown.contains(word),
            "no {word:?} in\n{shown}"
        );
    }
    let check = Desk::with_course(&text).call("check", &["--names"]);
    assert_eq!(check.code, Some(1));
    assert!(check.out.contains("[wish:copes]"), "{}", check.out);
}

#[test]
fn a_day_without_time_to_build_is_told() {
    let text = with(&[("finish = 16:30:00", "finish = 09:40:00"), (LUNCH, "")]);
    let ran = Desk::with_course(&text).call("check", &[]);
    assert_eq!(ran.code, Some(1), "{}", ran.err);
    assert!(
        ran.out.contains("Day 1 has no time to build"),
        "{}",
        ran.out
    );
}

#[test]
fn breaks_that_overlap_are_refused_at_the_second() {
    let tea = "breaks = [ { name = \"Lunch\", start = 12:30:00, minutes = 45 }, { name = \"Tea\", start = 13:00:00, minutes = 15 } ]\n";
    let ran = Desk::with_course(&with(&[(LUNCH, tea)])).call("plan", &[]);
    assert_eq!(ran.code, Some(2));
    let mut lines = ran.err.lines();
    let first = lines.next().expect("a line");
    assert!(
        first.contains(":19:80: ") && first.contains("13:00:00 begins before"),
        "{first}"
    );
    assert_eq!(
        lines.next(),
        Some("give the breaks in order, none inside another")
    );
}

/// In Britain the clocks went forward in the night to Sunday 28 March 2027, and in Chile back
/// in the night to Sunday 4 April: the days keep their hours by the clock on the wall.
#[test]
fn a_course_across_a_clock_change_keeps_the_clock_on_the_wall() {
    for (zone, place, days, offsets) in [
        (
            "Europe/London",
            ["54.2", "-2.4"],
            ["2027-03-27", "2027-03-28"],
            ["+00:00", "+01:00"],
        ),
        (
            "America/Santiago",
            ["-33.4", "-70.7"],
            ["2027-04-03", "2027-04-04"],
            ["-03:00", "-04:00"],
        ),
    ] {
        let text = changed(
            plain(),
            &[
                ("Europe/London", zone),
                ("latitude = 54.2", &format!("latitude = {}", place[0])),
                ("longitude = -2.4", &format!("longitude = {}", place[1])),
                ("2027-04-24", days[0]),
                ("2027-04-25", days[1]),
            ],
        );
        let desk = Desk::with_course(&text);
        let ran = desk.call("plan", &["--json"]);
        assert_eq!(ran.code, Some(0), "{}", ran.err);
        let plan: serde_json::Value = serde_json::from_str(&ran.out).expect("JSON");
        let entries = plan["timetable"].as_array().expect("a timetable");
        for (at, (starts, ends)) in [("09:00:00", "16:30:00"), ("09:15:00", "16:00:00")]
            .iter()
            .enumerate()
        {
            let mut of_day = entries.iter().filter(|it| it["day"] == at + 1);
            let first = of_day.next().expect("an entry");
            let last = of_day.next_back().expect("an entry");
            let time = |clock: &str| format!("{}T{clock}{}", days[at], offsets[at]);
            assert_eq!(first["start"], time(starts));
            assert_eq!(last["finish"], time(ends));
        }
        // Told on the day after the change, the time is that of the clock on the wall.
        let ran = desk.call("told", &["line", "--day", "2", "--at", "10:00"]);
        assert_eq!(ran.code, Some(0), "{}", ran.err);
        assert!(
            ran.out.contains("as told up to day 2, 10:00"),
            "{}",
            ran.out
        );
    }
}

#[test]
fn sixty_students_with_one_instructor_get_a_clear_answer() {
    let text = with(&[
        ("novices = 6\nimprovers = 2", "novices = 60"),
        ("length = \"6 m\"", "length = \"auto\""),
    ]);
    let shown = plan(&text);
    for words in [
        "60 students to an instructor is too many to keep safe and to teach",
        "two walls, one with 30 students",
        "would stand idle for want of a place at the wall",
    ] {
        assert!(shown.contains(words), "no {words:?} in\n{shown}");
    }
}

/// Every key that the example explains in a comment is one that can be had.
#[test]
fn the_keys_the_example_explains_are_sound() {
    let example = Library::example(false);
    let explained = [
        "[timetable]",
        "short_breaks =",
        "leave_out =",
        "teach =",
        "[worksheets]",
        "level =",
        "arithmetic =",
        "questions =",
        "[[wish]]",
        "lesson =",
        "day =",
        "at =",
        "[[absence]]",
        "who =",
        "from =",
        "pairs =",
        "[[progress]]",
        "time =",
        "stage =",
        "bay =",
        "done = 0",
        "wall = {",
        "beforehand =",
        "without =",
        "weather =",
        "rain =",
    ];
    let mut found = 0;
    let lines = example.lines().map(|line| {
        let bare = line.strip_prefix("# ").unwrap_or(line);
        let is_explained = bare != line && explained.iter().any(|key| bare.starts_with(key));
        found += usize::from(is_explained);
        if is_explained { bare } else { line }
    });
    let text = lines.collect::<Vec<_>>().join("\n") + "\n";
    assert_eq!(found, 29, "{text}");
    // The group's own table ends where that of the absence begins.
    let running = planned(&text).file.course.running;
    assert_eq!((running.wishes.len(), running.progress.len()), (1, 1));
    assert_eq!((running.beforehand.len(), running.without.len()), (2, 1));
}
