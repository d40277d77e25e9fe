//! The calendar looked at line by line; whole files are read by other programs in `tests/`.

use super::*;
use files::Library;
use files::course::CourseFile;
use proptest::prelude::*;
use std::sync::LazyLock;

/// The metric example: from 23 to 25 April 2027 in England.
static EXAMPLE: LazyLock<Course> = LazyLock::new(|| {
    let library = Library::built_in().expect("the built-in library is sound");
    let file = CourseFile::parse(Library::example(false)).expect("a course");
    Course::plan(file, &library).expect("a plan")
});

/// The example with something of it changed, the plan as it was.
fn changed(change: impl FnOnce(&mut craft::course::Course)) -> Course {
    let mut course = EXAMPLE.clone();
    change(&mut course.file.course);
    course
}

/// The lines of a calendar, unfolded.
fn lines(course: &Course, detail: Detail) -> Vec<String> {
    let text = calendar(course, detail, None).text.replace("\r\n ", "");
    text.lines().map(str::to_owned).collect()
}

/// The values of a property, in order.
fn values<'l>(lines: &'l [String], property: &str) -> Vec<&'l str> {
    let start = |line: &'l String| line.strip_prefix(property)?.strip_prefix([':', ';']);
    lines.iter().filter_map(start).collect()
}

#[test]
fn it_begins_with_what_every_calendar_must_have_and_no_more() {
    let lines = lines(&EXAMPLE, Detail::Entries);
    let head = [
        "BEGIN:VCALENDAR",
        "VERSION:2.0",
        "PRODID:-//Coursewright//Course calendar//EN",
        "CALSCALE:GREGORIAN",
        "BEGIN:VTIMEZONE",
        "TZID:Europe/London",
    ];
    assert_eq!(lines[..head.len()], head);
    // Each component once, the zone before what uses it.
    let begun = |what: &str| lines.iter().filter(|line| *line == what).count();
    assert_eq!(begun("BEGIN:VTIMEZONE"), 1);
    let counted = calendar(&EXAMPLE, Detail::Entries, None);
    assert_eq!(counted.days, EXAMPLE.file.course.days.len());
    assert_eq!(counted.entries, EXAMPLE.plan.timetable.len());
    assert_eq!(begun("BEGIN:VEVENT"), counted.days + counted.entries);
    let once = ["UID", "DTSTAMP", "SEQUENCE", "SUMMARY", "TRANSP"];
    for property in once {
        let count = values(&lines, property).len();
        assert_eq!(count, begun("BEGIN:VEVENT"), "{property}");
    }
}

/// Worked out with another library (uuid5 of Python 3) from place, seed, date and "day". They must
/// stay: whoever imported an entry finds it again by its name.
#[test]
fn names_of_entries_stay_as_they_are() {
    let course = changed(|course| course.seed = 1);
    let lines = lines(&course, Detail::Days);
    let kept = [
        "b6aa94cd-8896-58a6-bc3e-b9c4326f508e",
        "b40bbaed-9963-5aad-932d-814263b3d0b1",
    ];
    assert_eq!(values(&lines, "UID")[..2], kept);
}

/// The name and the title of each entry.
fn named(course: &Course) -> Vec<(String, String)> {
    let lines = lines(course, Detail::Entries);
    let uids = values(&lines, "UID").into_iter().map(str::to_owned);
    let titles = values(&lines, "SUMMARY").into_iter().map(str::to_owned);
    uids.zip(titles).collect()
}

#[test]
fn another_title_leaves_every_name_as_it_was() {
    let course = changed(|course| course.title = "Another title".to_owned());
    let uids = |course: &Course| named(course).into_iter().map(|it| it.0).collect::<Vec<_>>();
    let (was, is) = (uids(&EXAMPLE), uids(&course));
    assert_eq!(was, is);
    let mut once = is.clone();
    once.sort();
    once.dedup();
    assert_eq!(once.len(), is.len(), "no two entries have one name");
}

/// The first day begins an hour earlier: everything before lunch moves, and there is more of it.
#[test]
fn lunch_keeps_its_name_when_what_comes_before_it_moves() {
    let library = Library::built_in().expect("the built-in library is sound");
    let earlier = Library::example(false).replacen("start = 09:00:00", "start = 08:00:00", 1);
    let file = CourseFile::parse(&earlier).expect("a course");
    let course = Course::plan(file, &library).expect("a plan");
    let of = |course: &Course, title: &str| -> Vec<String> {
        let all = named(course).into_iter();
        all.filter(|it| it.1 == title).map(|it| it.0).collect()
    };
    assert_ne!(named(&EXAMPLE).len(), 0);
    for title in ["Lunch", "The footing", "Welcome and safety"] {
        assert_eq!(of(&EXAMPLE, title), of(&course, title), "{title}");
        assert!(!of(&course, title).is_empty(), "{title}");
    }
}

#[test]
fn a_day_has_one_name_however_much_is_written_of_it() {
    let [days, entries] = [Detail::Days, Detail::Entries].map(|it| lines(&EXAMPLE, it));
    let all = values(&entries, "UID");
    assert!(values(&days, "UID").iter().all(|uid| all.contains(uid)));
}

#[test]
fn control_characters_stay_out_and_line_ends_are_alike() {
    let course = changed(|course| {
        course.title = "One\r\nTwo\rThree\nFour\u{7}\u{0}\u{85}\tend".to_owned();
        course.venue.name = " \u{1} ".to_owned();
    });
    let lines = lines(&course, Detail::Days);
    assert_eq!(
        values(&lines, "SUMMARY")[0],
        "One\\nTwo\\nThree\\nFour\tend"
    );
}

#[test]
fn a_place_without_a_name_has_no_location() {
    let course = changed(|course| course.venue.name = " ".to_owned());
    let lines = lines(&course, Detail::Days);
    assert_eq!(values(&lines, "LOCATION"), [""; 0]);
    assert_eq!(values(&lines, "GEO").len(), course.file.course.days.len());
}

#[test]
fn degrees_are_written_to_six_decimals() {
    let course = changed(|course| {
        course.venue.latitude = 54.123_456_789;
        course.venue.longitude = -0.000_000_2;
    });
    let lines = lines(&course, Detail::Days);
    assert_eq!(values(&lines, "GEO")[0], "54.123457;0");
}

/// On 28 March 2027 the clock in England goes from 01:00 to 02:00, so that 01:30 is 02:30 and
/// comes after 02:00.
#[test]
fn what_begins_in_the_skipped_hour_does_not_end_before_it_begins() {
    let time = |hour, minute| NaiveTime::from_hms_opt(hour, minute, 0).expect("a time");
    let course = changed(|course| {
        course.days.truncate(1);
        course.days[0].date = NaiveDate::from_ymd_opt(2027, 3, 28).expect("a date");
        course.days[0].start = time(1, 30);
        course.days[0].finish = time(2, 0);
    });
    let lines = lines(&course, Detail::Days);
    assert_eq!(
        values(&lines, "DTSTART").last(),
        Some(&"TZID=Europe/London:20270328T023000")
    );
    assert_eq!(values(&lines, "DTEND"), [""; 0]);
}

/// The zone's part of the file for a course in July 2027.
fn zone(name: &str) -> Vec<String> {
    let course = changed(|course| {
        course.venue.time_zone = name.parse().expect("a zone");
        course.days.truncate(1);
        course.days[0].date = NaiveDate::from_ymd_opt(2027, 7, 10).expect("a date");
    });
    let lines = lines(&course, Detail::Days);
    let at = |what: &str| lines.iter().position(|line| line == what).expect(what);
    lines[at("BEGIN:VTIMEZONE")..at("END:VTIMEZONE")].to_vec()
}

/// The yearly rules by law: European directive 2000/84/EC for London; from memory for the others.
#[test]
fn a_zone_is_written_with_its_yearly_rules() {
    for (name, rules) in [
        ("Europe/London", ["3;BYDAY=-1SU", "10;BYDAY=-1SU"]),
        ("America/New_York", ["3;BYDAY=2SU", "11;BYDAY=1SU"]),
        ("Australia/Sydney", ["4;BYDAY=1SU", "10;BYDAY=1SU"]),
    ] {
        let lines = zone(name);
        let mut found = values(&lines, "RRULE");
        found.sort_by_key(|rule| !rule.contains(&format!("BYMONTH={}", rules[0])));
        let due = rules.map(|rule| rule.split_once(';').expect("a month and a day"));
        for (rule, (month, day)) in found.iter().zip(due) {
            assert!(rule.starts_with("FREQ=YEARLY;"), "{name}: {rule}");
            assert!(rule.contains(&format!("BYMONTH={month}")), "{name}: {rule}");
            assert!(rule.contains(day), "{name}: {rule}");
        }
        assert_eq!(found.len(), 2, "{name}");
    }
    let lines = zone("Asia/Kolkata");
    assert_eq!(values(&lines, "RRULE"), [""; 0]);
    assert_eq!(values(&lines, "TZOFFSETTO"), ["+0530"]);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    /// Whatever the date, the zone and the words: nothing panics, no line is longer than 75
    /// octets and every one ends as it must.
    #[test]
    fn any_course_gives_a_sound_file(
        days in -700_000..2_900_000_i32,
        zone in prop::sample::select(chrono_tz::TZ_VARIANTS.as_slice()),
        title in any::<String>(),
        venue in any::<String>(),
    ) {
        let course = changed(|course| {
            let first = NaiveDate::from_num_days_from_ce_opt(days.max(1)).expect("a date");
            for (day, date) in course.days.iter_mut().zip(first.iter_days()) {
                day.date = date;
            }
            course.venue.time_zone = zone;
            course.venue.name = venue;
            course.title = title;
        });
        for detail in [Detail::Entries, Detail::Days] {
            let text = calendar(&course, detail, None).text;
            prop_assert_eq!(text.matches('\n').count(), text.matches("\r\n").count());
            for line in text.split("\r\n") {
                prop_assert!(line.len() <= 75, "{}", line);
                prop_assert!(!line.contains(|it: char| it.is_control() && it != '\t'), "{:?}", line);
            }
        }
    }
}
