//! `calendar`: the file as two calendar libraries read it that had no part in writing it, held
//! against the plan; and which files it replaces.

use super::desk::{Desk, names};
use checks::courses::{changed, plain, with};
use chrono::{DateTime, TimeZone, Utc};
use chrono_tz::Tz;
use ical_rust::{DateOrDateTime, VCalendar};
use icalendar::{Calendar, CalendarDateTime, Component, DatePerhapsTime, Event, EventLike};
use serde_json::Value;

/// What happens, from when, to when.
type Line = (String, DateTime<Utc>, DateTime<Utc>);

/// A zone, the two days of a course in it, and how far its clock is ahead of UTC in the working
/// hours of each. Dates and offsets by the zones' laws, from memory: the European clock changes
/// on the last Sunday of March and October, the American on the second of March and the first of
/// November, the one of Sydney and Lord Howe on the first of October and April; Lord Howe by half
/// an hour; India not at all.
const COURSES: [(&str, [&str; 2], [&str; 2]); 8] = [
    (
        "Europe/London",
        ["2027-03-27", "2027-03-28"],
        ["+00:00", "+01:00"],
    ),
    (
        "Europe/London",
        ["2027-10-30", "2027-10-31"],
        ["+01:00", "+00:00"],
    ),
    (
        "Europe/Dublin",
        ["2027-03-27", "2027-03-28"],
        ["+00:00", "+01:00"],
    ),
    (
        "America/New_York",
        ["2027-11-06", "2027-11-07"],
        ["-04:00", "-05:00"],
    ),
    (
        "Australia/Sydney",
        ["2027-10-02", "2027-10-03"],
        ["+10:00", "+11:00"],
    ),
    (
        "Australia/Lord_Howe",
        ["2027-04-03", "2027-04-04"],
        ["+11:00", "+10:30"],
    ),
    (
        "Asia/Kolkata",
        ["2027-03-27", "2027-03-28"],
        ["+05:30", "+05:30"],
    ),
    (
        "Etc/UTC",
        ["2027-03-27", "2027-03-28"],
        ["+00:00", "+00:00"],
    ),
];

fn course_in(zone: &str, days: [&str; 2]) -> String {
    with(&[
        ("Europe/London", zone),
        ("2027-04-24", days[0]),
        ("2027-04-25", days[1]),
    ])
}

/// The calendar of a course, with what the program said of it.
fn written(desk: &Desk, more: &[&str]) -> (String, String) {
    let out = desk.file("course.ics");
    let shown = out.display().to_string();
    let mut rest = vec!["--out", &*shown];
    rest.extend(more);
    let ran = desk.call("calendar", &rest);
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    let text = std::fs::read_to_string(&out).expect("a calendar");
    (text, ran.out)
}

fn planned(desk: &Desk) -> Vec<Value> {
    let ran = desk.call("plan", &["--json"]);
    let plan: Value = serde_json::from_str(&ran.out).expect("JSON");
    plan["timetable"].as_array().expect("a timetable").clone()
}

fn word<'v>(line: &'v Value, key: &str) -> &'v str {
    line[key].as_str().expect("a text")
}

fn plan_lines(timetable: &[Value]) -> Vec<Line> {
    let time = |text: &str| -> DateTime<Utc> { text.parse().expect("a time") };
    let line = |it: &Value| {
        let times = (time(word(it, "start")), time(word(it, "finish")));
        (word(it, "what").to_owned(), times.0, times.1)
    };
    timetable.iter().map(line).collect()
}

/// The entries of the first reader, the days left out. It knows nothing of zones; their names are
/// looked up in the public tables, as phones do.
fn by_zone_name(text: &str) -> Vec<Line> {
    let calendar: Calendar = text.parse().expect("the first reader reads it");
    let time = |it: Option<DatePerhapsTime>| match it {
        Some(DatePerhapsTime::DateTime(CalendarDateTime::WithTimezone { date_time, tzid })) => {
            let zone: Tz = tzid.parse().expect("a zone");
            let time = zone.from_local_datetime(&date_time).single();
            Some(time.expect("a time that is there once").to_utc())
        }
        Some(DatePerhapsTime::Date(_)) => None,
        other => panic!("a time without its zone: {other:?}"),
    };
    let line = |event: &Event| {
        let summary = event.get_summary().expect("a summary");
        let times = (time(event.get_start())?, time(event.get_end())?);
        Some((summary.to_owned(), times.0, times.1))
    };
    calendar.events().filter_map(line).collect()
}

/// The entries of the second reader, which is made to rely on the definition of the zone that is
/// in the file: the zone gets a name that nobody knows.
fn by_the_files_own_zone(text: &str, zone: &str) -> Vec<Line> {
    let text = text.replace(zone, "Field/Clock");
    let calendar = VCalendar::try_from(&*text).expect("the second reader reads it");
    let time = |it: DateOrDateTime| match it {
        DateOrDateTime::DateTime { utc, tz: None } => Some(utc),
        DateOrDateTime::DateTime { tz, .. } => panic!("{tz:?} is not the zone of the file"),
        DateOrDateTime::WholeDay(_) => None,
    };
    let events = calendar.events.into_iter();
    events
        .filter_map(|it| Some((it.summary, time(it.dt_start)?, time(it.dt_end)?)))
        .collect()
}

#[test]
fn every_time_is_that_of_the_plan_across_every_change_of_the_clock() {
    for (zone, days, offsets) in COURSES {
        let desk = Desk::with_course(&course_in(zone, days));
        let (text, _) = written(&desk, &[]);
        let timetable = planned(&desk);
        for line in &timetable {
            let day = usize::try_from(line["day"].as_u64().expect("a day")).expect("few");
            let start = word(line, "start").replace('Z', "+00:00");
            assert!(start.ends_with(offsets[day - 1]), "{zone}: {start}");
        }
        let due = plan_lines(&timetable);
        assert_eq!(by_zone_name(&text), due, "{zone}");
        assert_eq!(by_the_files_own_zone(&text, zone), due, "{zone}");
    }
}

#[test]
fn days_alone_go_from_arriving_to_leaving() {
    for (zone, days, offsets) in COURSES {
        let desk = Desk::with_course(&course_in(zone, days));
        let (text, said) = written(&desk, &["--days"]);
        let hours = [("09:00:00", "16:30:00"), ("09:15:00", "16:00:00")];
        let due: Vec<Line> = (0..2)
            .map(|day| {
                let time = |clock: &str| -> DateTime<Utc> {
                    let text = format!("{}T{clock}{}", days[day], offsets[day]);
                    text.parse().expect("a time")
                };
                let (start, finish) = hours[day];
                ("Plain course".to_owned(), time(start), time(finish))
            })
            .collect();
        assert_eq!(by_zone_name(&text), due, "{zone}");
        assert_eq!(by_the_files_own_zone(&text, zone), due, "{zone}");
        assert!(said.contains("course.ics: 2 days, "), "{said}");
    }
}

#[test]
fn each_day_stands_above_its_lines_with_place_and_timetable() {
    let desk = Desk::with_course(&plain());
    let (text, said) = written(&desk, &[]);
    let timetable = planned(&desk);
    let held = format!("2 days and {} lines of the timetable", timetable.len());
    assert!(said.contains(&held), "{said}");
    assert!(said.contains("24 and 25 April 2027, in the clock of Europe/London"));
    let calendar: Calendar = text.parse().expect("it reads");
    let days: Vec<&Event> = calendar
        .events()
        .filter(|it| it.property_value("LOCATION").is_some())
        .collect();
    for (number, day) in days.iter().enumerate() {
        let date = |text: &str| Some(DatePerhapsTime::Date(text.parse().expect("a date")));
        let [begins, ends] = [["2027-04-24", "2027-04-25"], ["2027-04-25", "2027-04-26"]][number];
        assert_eq!((day.get_start(), day.get_end()), (date(begins), date(ends)));
        assert_eq!(day.get_summary(), Some("Plain course"));
        assert_eq!(day.get_location(), Some("Long Meadow"));
        assert_eq!(day.property_value("GEO"), Some("54.2;-2.4"));
        assert_eq!(day.property_value("TRANSP"), Some("TRANSPARENT"));
        let told = day.get_description().expect("a timetable");
        let lines: Vec<&str> = told.lines().collect();
        assert!(lines[0].starts_with(&format!("Day {} of 2, 09:", number + 1)));
        let due: Vec<String> = timetable
            .iter()
            .filter(|line| line["day"] == number + 1)
            .map(|line| {
                let clock = |key| &word(line, key)[11..16];
                format!(
                    "{} - {}  {}",
                    clock("start"),
                    clock("finish"),
                    word(line, "what")
                )
            })
            .collect();
        assert_eq!(lines[1..lines.len() - 1], due);
    }
    assert_eq!(days.len(), 2);
}

/// Breaks leave the calendar free, everything else makes it busy; nothing rings.
#[test]
fn breaks_leave_the_calendar_free() {
    let desk = Desk::with_course(&plain());
    let (text, _) = written(&desk, &[]);
    let calendar: Calendar = text.parse().expect("it reads");
    let shown: Vec<bool> = calendar
        .events()
        .filter(|it| it.property_value("LOCATION").is_none())
        .map(|it| it.property_value("TRANSP") == Some("TRANSPARENT"))
        .collect();
    let timetable = planned(&desk);
    let breaks: Vec<bool> = timetable.iter().map(|it| it["kind"] == "break").collect();
    assert!(breaks.contains(&true) && breaks.contains(&false));
    assert_eq!(shown, breaks);
    for unwanted in ["VALARM", "METHOD", "\nX-", "ATTENDEE", "ORGANIZER"] {
        assert!(!text.contains(unwanted), "{unwanted}");
    }
}

#[test]
fn awkward_words_come_through_whole_and_no_line_is_too_long() {
    let title = "Mauern, trocken; \"Grüße\" \\n \\ 石垣 Über die Höhen, über die Hügel, \
                 über das Öde und noch ein Stück weiter;\nbis ans Ende";
    let venue = "Hof \"Zur Mühle\"; Acker 3, links: hinter dem Tor";
    let quoted = |text: &str| format!("{text:?}");
    let text = changed(
        plain(),
        &[
            ("\"Plain course\"", &*quoted(title)),
            ("\"Long Meadow\"", &*quoted(venue)),
            ("\"Lunch\"", "\"Brot, Käse; Öl\""),
        ],
    );
    let desk = Desk::with_course(&text);
    let (text, _) = written(&desk, &[]);
    assert!(text.ends_with("END:VCALENDAR\r\n"));
    assert_eq!(text.matches('\n').count(), text.matches("\r\n").count());
    for line in text.split("\r\n") {
        assert!(line.len() <= 75, "{} octets: {line}", line.len());
        assert!(!line.contains(char::is_control), "{line:?}");
    }
    let first: Calendar = text.parse().expect("the first reader reads it");
    let second = VCalendar::try_from(&*text).expect("the second reader reads it");
    let day = first.events().next().expect("a day");
    assert_eq!(day.get_summary(), Some(title));
    assert_eq!(day.get_location(), Some(venue));
    assert_eq!(second.events[0].summary, title);
    let told = second.events[0].description.as_deref();
    assert_eq!(told, day.get_description());
    let due = plan_lines(&planned(&desk));
    assert!(due.iter().any(|line| line.0 == "Brot, Käse; Öl"));
    assert_eq!(by_zone_name(&text), due);
}

#[test]
fn the_same_course_gives_the_same_file_and_each_entry_has_a_name_of_its_own() {
    let desk = Desk::with_course(&plain());
    let (first, _) = written(&desk, &[]);
    let (again, _) = written(&desk, &[]);
    assert_eq!(first, again);
    assert_eq!(
        first.matches("DTSTAMP:20270424T000000Z\r\n").count(),
        first.matches("BEGIN:VEVENT").count()
    );
    let uids = |text: &str| -> Vec<String> {
        let calendar: Calendar = text.parse().expect("it reads");
        let mut uids: Vec<String> = calendar
            .events()
            .filter_map(|it| it.get_uid().map(str::to_owned))
            .collect();
        let all = uids.len();
        uids.sort();
        uids.dedup();
        assert_eq!(uids.len(), all, "two entries have one name");
        uids
    };
    // Written later or under another title it is the same entries; a course elsewhere has none.
    let (later, _) = written(&desk, &["--made", "2027-04-20"]);
    assert_eq!(later, first.replace("DTSTAMP:20270424", "DTSTAMP:20270420"));
    let renamed = Desk::with_course(&with(&[("Plain course", "Other course")]));
    assert_eq!(uids(&first), uids(&written(&renamed, &[]).0));
    let other = Desk::with_course(&with(&[("latitude = 54.2", "latitude = 51.3")]));
    let others = uids(&written(&other, &[]).0);
    assert!(uids(&first).iter().all(|uid| !others.contains(uid)));
}

#[test]
fn nothing_of_the_students_is_in_it() {
    let roster = "[[student]]\nname = \"Ash Grove\"\nprivate = { emergency_contact = \
                  \"07700 900123\", medical = \"bee stings\" }\n[wall]\n";
    let counts = "novices = 6\nimprovers = 2\nexperienced = 0\n";
    let text = changed(plain(), &[("[wall]\n", roster), (counts, "")]);
    let (text, _) = written(&Desk::with_course(&text), &[]);
    let text = text.replace("\r\n ", "");
    for secret in ["Ash", "Grove", "900123", "bee stings"] {
        assert!(!text.contains(secret), "{secret}");
    }
}

#[test]
fn only_a_calendar_of_ours_is_replaced() {
    let desk = Desk::with_course(&plain());
    let other =
        "BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:-//Somebody//Else//EN\r\nEND:VCALENDAR\r\n";
    for (name, content) in [
        ("course.walling", plain()),
        ("theirs.ics", other.to_owned()),
        ("empty.ics", String::new()),
    ] {
        let path = desk.put(name, &content);
        let ran = desk.call("calendar", &["--out", &path.display().to_string()]);
        assert_eq!(ran.code, Some(2), "{name}: {}", ran.out);
        assert!(
            ran.err.contains("is there already and is not overwritten"),
            "{}",
            ran.err
        );
        assert_eq!(std::fs::read_to_string(&path).expect("the file"), content);
    }
    let (first, _) = written(&desk, &[]);
    std::fs::write(desk.course(), with(&[("Long Meadow", "Short Meadow")])).expect("written");
    let (second, _) = written(&desk, &[]);
    assert!(first.contains("Long Meadow") && second.contains("Short Meadow"));
    let due = ["course.ics", "course.walling", "empty.ics", "theirs.ics"];
    assert_eq!(names(desk.path()), due, "something was left behind");
}

#[test]
fn a_place_that_can_not_be_written_is_told() {
    let desk = Desk::with_course(&plain());
    let away = desk.file("nowhere/course.ics").display().to_string();
    let ran = desk.call("calendar", &["--out", &away]);
    assert_eq!(ran.code, Some(2));
    assert!(ran.err.contains("the folder does not exist"), "{}", ran.err);
    let folder = desk.path().display().to_string();
    let ran = desk.call("calendar", &["--out", &folder]);
    assert_eq!(ran.code, Some(2));
    assert!(ran.err.contains(&folder), "{}", ran.err);
}
