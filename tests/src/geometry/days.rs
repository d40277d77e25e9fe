//! The timetable of days drawn at random: nothing overlaps, nothing leaves its day.

use checks::courses::{changed, list, numbers, plain};
use chrono::{DateTime, FixedOffset, NaiveDate, NaiveTime, TimeDelta};
use proptest::prelude::*;
use serde_json::Value;

const KINDS: [&str; 5] = ["lesson", "build", "break", "safety", "tidy"];

/// A course day, in minutes after midnight.
#[derive(Debug, Clone)]
pub struct Day {
    /// Days after the one before it.
    pub gap: u32,
    pub start: u32,
    pub finish: u32,
    /// Start and minutes.
    pub breaks: Vec<[u32; 2]>,
}

/// Days of 1 to 14 hours, with up to four breaks at any minute.
pub fn day() -> impl Strategy<Value = Day> {
    let cuts = prop::collection::btree_set(1..1000_u32, 0..9);
    (1..20_u32, 300..660_u32, 60..840_u32, cuts).prop_map(|(gap, start, long, cuts)| {
        let finish = (start + long).min(24 * 60 - 1);
        let cuts: Vec<u32> = cuts
            .into_iter()
            .map(|part| start + part * (finish - start) / 1000)
            .collect();
        // Every other stretch between cuts is a break.
        let breaks = cuts
            .chunks_exact(2)
            .filter(|pair| pair[0] < pair[1])
            .map(|pair| [pair[0], (pair[1] - pair[0]).min(600)])
            .collect();
        Day {
            gap,
            start,
            finish,
            breaks,
        }
    })
}

pub fn clock(minutes: u32) -> NaiveTime {
    NaiveTime::from_hms_opt(minutes / 60, minutes % 60, 0).expect("a time of day")
}

fn dates(days: &[Day]) -> Vec<NaiveDate> {
    // Spring, so that clocks change within some of the courses.
    let mut date = NaiveDate::from_ymd_opt(2027, 3, 20).expect("a date");
    days.iter()
        .map(|day| {
            date += TimeDelta::days(day.gap.into());
            date
        })
        .collect()
}

/// The days as tables of a course file.
pub fn text(days: &[Day]) -> String {
    days.iter()
        .zip(dates(days))
        .map(|(day, date)| {
            let breaks: Vec<String> = day
                .breaks
                .iter()
                .enumerate()
                .map(|(at, [start, minutes])| {
                    let start = clock(*start);
                    format!("{{ name = \"Break {at}\", start = {start}, minutes = {minutes} }}")
                })
                .collect();
            format!(
                "[[day]]\ndate = {date}\nstart = {}\nfinish = {}\nbreaks = [ {} ]\n",
                clock(day.start),
                clock(day.finish),
                breaks.join(", ")
            )
        })
        .collect()
}

/// The plain course on other days.
pub fn on(days: &[Day]) -> String {
    let plain = plain();
    let (before, rest) = plain.split_once("[[day]]").expect("days");
    let (_, after) = rest.split_once("[group]").expect("a group after the days");
    format!("{before}{}[group]{after}", text(days))
}

fn time(entry: &Value, key: &str) -> DateTime<FixedOffset> {
    let text = entry[key].as_str().expect("a time");
    DateTime::parse_from_rfc3339(text).expect("a time with its offset")
}

proptest! {
    #![proptest_config(checks::cases(32))]

    #[test]
    fn no_two_entries_overlap_and_none_leaves_its_day(
        days in prop::collection::vec(day(), 1..5),
        metres in 1..30_u32,
    ) {
        let length = format!("\"{metres} m\"");
        let plan = numbers(&changed(on(&days), &[("\"6 m\"", &length)]));
        let dates = dates(&days);
        let mut before: Option<DateTime<FixedOffset>> = None;
        for entry in list(&plan, "/timetable") {
            let [from, to] = ["start", "finish"].map(|key| time(entry, key));
            prop_assert!(from < to, "{entry}");
            prop_assert!(before.is_none_or(|before| before <= from), "{entry} after {before:?}");
            before = Some(to);
            let number = entry["day"].as_u64().expect("a day") as usize;
            let day = &days[number - 1];
            prop_assert_eq!(from.date_naive(), dates[number - 1]);
            prop_assert_eq!(to.date_naive(), dates[number - 1]);
            prop_assert!(clock(day.start) <= from.time(), "{} before the day", entry);
            prop_assert!(to.time() <= clock(day.finish), "{} after the day", entry);
            let kind = entry["kind"].as_str().expect("a kind");
            prop_assert!(KINDS.contains(&kind), "{kind}");
            prop_assert!(!entry["what"].as_str().expect("words").is_empty());
        }
    }

    #[test]
    fn every_break_stands_where_it_was_put(days in prop::collection::vec(day(), 1..4)) {
        let plan = numbers(&on(&days));
        for (number, day) in days.iter().enumerate() {
            for (at, [start, minutes]) in day.breaks.iter().enumerate() {
                let there = list(&plan, "/timetable").iter().any(|entry| {
                    entry["day"].as_u64() == Some(number as u64 + 1)
                        && entry["kind"] == "break"
                        && entry["what"] == format!("Break {at}")
                        && time(entry, "start").time() == clock(*start)
                        && time(entry, "finish").time() == clock(start + minutes)
                });
                prop_assert!(there, "no break {at} on day {}", number + 1);
            }
        }
    }

    #[test]
    fn stages_are_done_in_order_and_early_before_late(
        days in prop::collection::vec(day(), 1..4),
    ) {
        let plan = numbers(&on(&days));
        for stage in list(&plan, "/finish/by_stage") {
            let times: Vec<Option<&str>> =
                ["p10", "p50", "p90"].map(|key| stage[key].as_str()).to_vec();
            for pair in times.windows(2) {
                match pair {
                    [Some(_), Some(_)] => {
                        let [a, b] = [pair[0], pair[1]].map(|text| {
                            DateTime::parse_from_rfc3339(text.expect("a time")).expect("ISO")
                        });
                        prop_assert!(a <= b, "{stage}");
                    }
                    [None, Some(_)] => prop_assert!(false, "late but never early: {stage}"),
                    _ => {}
                }
            }
        }
    }
}
