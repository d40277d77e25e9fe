//! Sunrise, sunset and civil twilight against an astronomer's ephemeris.

use checks::courses::{list, numbers, parsed, with};
use checks::{Found, Row, every_row};
use chrono::DateTime;
use craft::sun::{SunDay, sun};

/// Agreement asked for: times on paper go to the minute.
const WITHIN_SECONDS: f64 = 60.0;

/// A one-day course at a place on a date.
fn course(latitude: &str, longitude: &str, zone: &str, date: &str) -> String {
    let second_day = "[[day]]\ndate = 2027-04-25\nstart = 09:15:00\nfinish = 16:00:00\n\
                      breaks = [ { name = \"Dinner\", start = 12:15:00, minutes = 30 } ]\n";
    with(&[
        ("latitude = 54.2", &format!("latitude = {latitude}")),
        ("longitude = -2.4", &format!("longitude = {longitude}")),
        ("Europe/London", zone),
        ("date = 2027-04-24", &format!("date = {date}")),
        (second_day, ""),
    ])
}

fn day(latitude: &str, longitude: &str, zone: &str, date: &str) -> SunDay {
    let course = parsed(&course(latitude, longitude, zone, date)).course;
    sun(&course.venue, course.days[0].date)
}

/// Seconds since 1970 of a time in the table.
fn seconds(row: &Row, column: &str) -> f64 {
    let time = DateTime::parse_from_rfc3339(row.text(column)).expect("a time with its offset");
    time.timestamp() as f64
}

fn agrees(row: &Row) -> Found {
    let [latitude, longitude, zone, date] =
        ["latitude", "longitude", "zone", "date"].map(|column| row.text(column));
    let ours = day(latitude, longitude, zone, date);
    for (column, time) in [
        ("civil_dawn", ours.civil_dawn),
        ("sunrise", ours.sunrise),
        ("sunset", ours.sunset),
        ("civil_dusk", ours.civil_dusk),
    ] {
        let time = time.ok_or_else(|| row.fault(&format!("there is no {column}")))?;
        let ours = time.timestamp() as f64;
        row.near(column, ours, seconds(row, column), WITHIN_SECONDS)?;
        // Whatever the zone, the time belongs to the course day of that zone's calendar.
        row.same("the date", &time.date_naive().to_string(), date)?;
    }
    Ok(())
}

#[test]
fn the_sun_rises_and_sets_by_the_ephemeris() {
    every_row("sun.csv", agrees);
}

/// Far in the north the sun stays up in June, and in December there is twilight at most:
/// at 69.65 degrees it culminates at 90 - 69.65 - 23.44 = -3.1 degrees, above -6.
#[test]
fn where_the_sun_does_not_rise_or_set_there_is_no_time() {
    let all = |day: &SunDay| {
        [day.sunrise, day.sunset, day.civil_dawn, day.civil_dusk].map(|time| time.is_some())
    };
    let at = |latitude, date| all(&day(latitude, "18.96", "Europe/Oslo", date));
    assert_eq!(at("69.65", "2027-06-21"), [false; 4], "polar day");
    assert_eq!(
        at("69.65", "2027-12-21"),
        [false, false, true, true],
        "polar night with twilight"
    );
    assert_eq!(at("85", "2027-12-21"), [false; 4], "polar night");
    assert_eq!(at("-85", "2027-12-21"), [false; 4], "southern polar day");
    assert_eq!(at("54.2", "2027-06-21"), [true; 4], "an ordinary day");
}

#[test]
fn a_plan_without_sunrise_says_null_and_nothing_else_breaks() {
    let text = course("69.65", "18.96", "Europe/Oslo", "2027-06-21");
    let plan = numbers(&text);
    let sun = &list(&plan, "/sun")[0];
    assert_eq!(sun["date"], "2027-06-21");
    for key in ["sunrise", "sunset", "civil_dawn", "civil_dusk"] {
        assert!(sun[key].is_null(), "{key}: {}", sun[key]);
    }
    assert!(!list(&plan, "/timetable").is_empty());
}

/// A course in the night before the clocks go forward and one in the week after: the offset
/// in the plan is the zone's own on that date.
#[test]
fn times_carry_the_offset_of_their_date() {
    for (date, offset) in [
        ("2027-03-27", "+00:00"),
        ("2027-03-28", "+01:00"),
        ("2027-10-30", "+01:00"),
        ("2027-10-31", "+00:00"),
    ] {
        let plan = numbers(&course("54.2", "-2.4", "Europe/London", date));
        let sunrise = list(&plan, "/sun")[0]["sunrise"].as_str().expect("a time");
        assert!(
            sunrise.starts_with(date) && sunrise.ends_with(offset),
            "{sunrise}"
        );
        let first = list(&plan, "/timetable")[0]["start"]
            .as_str()
            .expect("a time");
        assert_eq!(first, format!("{date}T09:00:00{offset}"));
    }
}
